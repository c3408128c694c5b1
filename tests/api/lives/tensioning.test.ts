import type { Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, refusedBy, siteCommand } from '../support/plant.ts';
import { specification } from '../support/sample-plant.ts';
import { passesSetBy } from '../support/set-work.ts';
import { listJoint, openShutdown, type Shutdown } from '../support/shutdown.ts';
import { tensionerProcedure, tensionerTools } from '../support/tensioning.ts';
import { makeState, onMake, openAndNipUp, release } from '../support/work.ts';

let shutdown: Shutdown;
let procedureId: string;
let tools: Awaited<ReturnType<typeof tensionerTools>>;

beforeAll(async () => {
  shutdown = await openShutdown();
  procedureId = await tensionerProcedure(shutdown, 'BP-TN');
  tools = await tensionerTools(shutdown);
});
afterAll(() => shutdown?.close());

type Tensioner = Extract<Payload<'target-approved'>, { basis: 'calculated' }>['tensioner'];
const target = (tensioner: Tensioner): Payload<'target-approved'> => ({
  basis: 'calculated',
  gasketDataId: shutdown.gasketDataId,
  lubricantId: shutdown.lubricantId,
  boltStress_MPa: 250,
  acceptedShortfall: null,
  ...(tensioner ? { tensioner } : {}),
});
const named = () => ({ toolId: tools.toolId, gaugeDivision_MPa: 0.5 });

async function assigned(options: Parameters<typeof listJoint>[1] = {}, procedure = procedureId) {
  const joint = await listJoint(shutdown, options);
  await onMake(shutdown, joint).must(shutdown.engineer, 'procedure-assigned', { procedureId: procedure, revision: 1 });
  return joint;
}
const refusal = async (
  tensioner: Tensioner,
  options: Parameters<typeof listJoint>[1] = {},
  procedure = procedureId,
) => {
  const joint = await assigned(options, procedure);
  const { body } = await onMake(shutdown, joint).send(shutdown.engineer, 'target-approved', target(tensioner));
  return body.errors?.[0]?.code;
};

describe('a joint tightened by tensioner, half of the bolts at once', () => {
  it('gets a pressure for each group, is tightened by them and checked at the last', async () => {
    const joint = await assigned();
    const { must, send } = onMake(shutdown, joint);
    await must(shutdown.engineer, 'target-approved', target(named()));
    const kept = (await makeState(shutdown, joint)).target;
    const plan = kept?.tensioning;
    if (!plan) throw new Error('The target kept no pressures.');
    expect(plan.groups).toEqual([
      [1, 3, 5, 7, 9, 11],
      [2, 4, 6, 8, 10, 12],
    ]);
    expect(plan.residualLoad_N).toBe(kept.boltLoad_N);
    // READ, a tensioner maker's note: tool load = residual × max(1.01 + D/Leff, 1.10); 7/8 in on 83.9 mm grip and a nut.
    expect(plan.loadTransferFactor).toBeCloseTo(1.01 + 22.225 / (83.9 + 22.225), 2);
    expect(plan.toolLoad_N).toBeCloseTo(plan.residualLoad_N * plan.loadTransferFactor, 3);
    expect(plan.utilisation).toBeLessThanOrEqual(0.95);
    const [a = 0, b = 0] = plan.passes.at(-1)?.groupPressures_MPa ?? [];
    expect(a).toBeGreaterThan(b);
    for (const pressure of plan.passes.flatMap(({ groupPressures_MPa }) => groupPressures_MPa))
      expect(pressure % 0.5).toBe(0);
    expect(kept.passes.map(({ pressure_MPa }) => pressure_MPa)).toEqual(
      plan.passes.map(({ groupPressures_MPa }) => groupPressures_MPa[1]),
    );

    await release(shutdown, joint);
    await openAndNipUp(shutdown, joint);
    const by = { performedBy: [shutdown.technician.personId, shutdown.mate.personId] };
    const { work, pass } = passesSetBy(shutdown, tools, (pressure_MPa) => ({
      pressure_MPa,
      asEntered: { value: pressure_MPa * 10, unit: 'bar' },
    }));
    const wrong = await send(shutdown.technician, 'pass-recorded', pass(1, a), by);
    expect(refusedBy(wrong)).toEqual(['passes.set-as-target']);
    for (const [index, { groupPressures_MPa }] of plan.passes.entries())
      await must(shutdown.technician, 'pass-recorded', pass(index + 1, groupPressures_MPa[0] ?? 0), by);
    await must(shutdown.technician, 'final-round-recorded', { ...work(b), rounds: 1, nutMoved: false }, by);
    const tight = await makeState(shutdown, joint);
    expect(tight.stage).toBe('tight');
    expect(tight.passes[0]?.set).toMatchObject({ asEntered: { unit: 'bar' } });
  });
});

describe('there is no pressure, and the refusal says what is missing', () => {
  it('without a tensioner named', async () => {
    expect(await refusal(undefined)).toBe('tensioner-not-named');
  });

  it('without the hydraulic area in the tool register', async () => {
    const toolId = uuidv7();
    accepted(
      await siteCommand(shutdown.plant, shutdown.inspector, 'tool-registered', toolId, {
        toolId,
        tag: 'TN-9',
        kind: 'tensioner',
        maker: null,
        scaleMinimum: null,
        scaleMaximum: 150,
        scaleUnit: 'MPa',
        scaleDivision: null,
      }),
    );
    expect(await refusal({ toolId, gaugeDivision_MPa: 0.5 })).toBe('hydraulic-area-missing');
  });

  it('with a wrench in place of the tensioner', async () => {
    expect(await refusal({ toolId: shutdown.wrenchId, gaugeDivision_MPa: 0.5 })).toBe('not-a-tensioner');
  });

  it('without the thickness of every clamped part', async () => {
    const { clampedParts } = specification();
    const [first, ...rest] = clampedParts;
    const unknown = [{ ...first!, thickness_mm: null }, ...rest];
    expect(await refusal(named(), { specification: specification({ clampedParts: unknown }) })).toBe(
      'clamped-thickness-missing',
    );
  });

  it('without the coverage in the procedure', async () => {
    const without = await tensionerProcedure(shutdown, 'BP-TN-0', null);
    expect(await refusal(named(), {}, without)).toBe('coverage-missing');
  });

  it('for groups of a joint that is no plain pair', async () => {
    expect(await refusal(named(), { kind: 'insert' })).toBe('group-pressures-need-simulation');
  });

  it('where the procedure tightens by another method', async () => {
    expect(await refusal(named(), {}, shutdown.procedureId)).toBe('tensioner-of-other-method');
  });

  it('by a maker’s torque', async () => {
    const joint = await assigned();
    const { body } = await onMake(shutdown, joint).send(shutdown.engineer, 'target-approved', {
      basis: 'makers-torque',
      torque_Nm: 400,
      torqueAsEntered: { value: 400, unit: 'N·m' },
      lubricant: 'test paste',
      source: 'maker’s manual',
    });
    expect(body.errors?.[0]?.code).toBe('torque-not-for-tensioner');
  });
});
