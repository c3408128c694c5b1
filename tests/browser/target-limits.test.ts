import type { ProceduresAnswer } from '@seatwell/contract';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listJoint } from '../api/support/shutdown.ts';
import { jointState, makeState, onMake } from '../api/support/work.ts';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { button, sign } from './support/dialogs.ts';
import { desk, phone } from './support/gallery.ts';
import { read } from './support/people.ts';
import { picture } from './support/running-plant.ts';
import { openPage } from './support/watched-page.ts';

let plant: BuiltPlant;
beforeAll(async () => {
  plant = await openBuiltPlant();
});
afterAll(() => plant?.close());

const fill = (page: Page, label: string, value: string) => page.getByLabel(label).fill(value);

describe('the joint engineer enters what a target is checked against', () => {
  it('bolts in the procedure, loads and temperatures in the register, and sees them in the target', async () => {
    const { shutdown } = plant;
    const context = await plant.contextOf('engineer', desk);

    // The procedure says what the bolts are; its next revision is approved.
    const { page: procedure } = await openPage(context, `/site/procedures/${shutdown.procedureId}`);
    await procedure.getByLabel('The procedure says what the bolts are').click();
    await fill(procedure, 'Elastic modulus of the bolt', '204000');
    await fill(procedure, 'Expansion of the bolts', '12');
    await procedure.getByText('Name the source of the bolt material’s values.').waitFor();
    await fill(procedure, 'Source of the bolt material’s values', 'steel sheet 4');
    await procedure.getByLabel('Washers per bolt').selectOption('1');
    await picture(procedure, 'procedure-bolts');
    await button(procedure, 'Save as revision 2').click();
    await button(procedure, 'Approve the procedure').click();
    await sign(procedure, 'Sign');
    const { rows } = await read<ProceduresAnswer>(context, '/procedures');
    expect(rows.find(({ revision }) => revision === 2)?.content.bolts).toMatchObject({
      condition: 'new',
      coating: null,
      washers: { perBolt: 1 },
      material: { elasticModulus_MPa: 204_000, expansion_perK: 1.2e-5, source: 'steel sheet 4' },
    });

    // The register says what pulls on the joint and how hot its parts become; half of it is not taken.
    const joint = await listJoint(shutdown);
    const { page: register } = await openPage(context, plant.at(`/joints/${joint.jointId}/edit`));
    await register.getByText('External loads, test pressure, ribs').click();
    await fill(register, 'External pull', '100');
    await register.getByText('Give pull, moment and their source; 0 where there is none.').waitFor();
    await fill(register, 'External moment', '0');
    await fill(register, 'Source of pull and moment', 'stress analysis 12');
    await register.getByText('Bolts and flanges at different temperatures').click();
    await fill(register, 'Temperature at assembly', '20');
    await fill(register, 'Going up: bolts', '100');
    await fill(register, 'Going up: flanges', '120');
    await fill(register, 'Expansion of the flanges', '12');
    await fill(register, 'Source of the expansions', 'start-up study');
    await picture(register, 'register-limits');
    await button(register, 'Save the change').click();
    await register.waitForURL((url) => !url.pathname.endsWith('/edit'));
    const { service } = (await jointState(shutdown, joint.jointId)).specification;
    expect(service.external).toEqual({ axialForce_N: 100_000, moment_Nm: 0, source: 'stress analysis 12' });
    expect(service.temperatures).toMatchObject({ goingUp: { bolt_C: 100, flange_C: 120 }, comingDown: null });

    // The target shows the limits, and what nobody has said.
    await onMake(shutdown, joint).must(shutdown.engineer, 'procedure-assigned', {
      procedureId: shutdown.procedureId,
      revision: 2,
    });
    const { page: target } = await openPage(context, plant.at(`/joints/${joint.jointId}/target`));
    await target.getByLabel('Gasket data').selectOption(shutdown.gasketDataId);
    await target.getByLabel('Lubricant').selectOption(shutdown.lubricantId);
    await fill(target, 'Bolt stress', '250');
    await target.getByText('flange rotation: not checked.').waitFor();
    await expect.poll(() => target.getByText('external pull and moment: not checked.').count()).toBe(0);
    await button(target, 'Show as table').click();
    await target.getByRole('row', { name: /bolt, flanges hotter.*start-up study/ }).waitFor();
    await picture(target, 'target-limits');
    await button(target, 'Approve the target').click();
    await sign(target, 'Sign');
    await target.waitForURL((url) => !url.pathname.endsWith('/target'));
    const kept = (await makeState(shutdown, joint)).target;
    expect(kept?.sources).toEqual(expect.arrayContaining(['stress analysis 12', 'start-up study', 'steel sheet 4']));
    expect(kept?.notChecked?.map(({ limit }) => limit)).toEqual(['flange-strength', 'flange-rotation', 'gasket-test']);

    // On a phone the joint page says the same.
    const { page: seen } = await openPage(
      await plant.contextOf('technician', phone),
      plant.at(`/joints/${joint.jointId}`),
    );
    await seen.getByText('flange strength: not checked.').waitFor();
    await picture(seen, 'joint-limits-phone');
  });
});
