import type { Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, refusedBy, siteCommand } from '../support/plant.ts';
import { specification } from '../support/sample-plant.ts';
import { openShutdown, type Shutdown } from '../support/shutdown.ts';
import { taleTo } from '../support/tale.ts';
import { nippedUp } from '../support/work.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

const tableOf = (more: Partial<Payload<'target-table-approved'>> = {}): Payload<'target-table-approved'> => ({
  tableId: uuidv7(),
  name: 'Feed lines, spiral wound',
  procedureId: shutdown.procedureId,
  procedureRevision: 1,
  gasketDataId: shutdown.gasketDataId,
  lubricantId: shutdown.lubricantId,
  boltGrade: 'B7',
  rows: [
    { standard: 'ASME-B16.5', size: 'NPS8', rating: '300', boltStress_MPa: 310, acceptedShortfall: null },
    { standard: 'ASME-B16.5', size: 'NPS6', rating: '300', boltStress_MPa: 310, acceptedShortfall: null },
  ],
  ...more,
});

async function approvedTable(more: Partial<Payload<'target-table-approved'>> = {}): Promise<string> {
  const table = tableOf(more);
  const { plant, engineer } = shutdown;
  accepted(await siteCommand(plant, engineer, 'target-table-approved', table.tableId, table));
  return table.tableId;
}

const calculationRefuses = (code: string) => ({
  status: 422,
  body: {
    type: 'urn:seatwell:problem:calculation-refused',
    errors: [expect.objectContaining({ code })],
  },
});

describe('a target table approved for a family', () => {
  it('gives every joint of the family its bolt stress, computed for its own stack', async () => {
    const tableId = await approvedTable();
    const tale = await taleTo(shutdown, 'procedure assigned');
    await tale.tell('target-approved', { payload: { basis: 'target-table', tableId } });
    const { target, stage } = await tale.make();
    expect(stage).toBe('engineered');
    expect(target).toMatchObject({ basis: 'target-table', tableId, boltStress_MPa: 310, insideWindow: true });
    expect(target?.torque_Nm).toBeGreaterThan(100);
    await tale.goOn('tight', 'engineered');
  });

  it('is refused to a joint outside the family, with the reason', async () => {
    const tale = await taleTo(shutdown, 'procedure assigned');
    const ask = (tableId: string) => tale.say('target-approved', { payload: { basis: 'target-table', tableId } });
    const { rows } = tableOf();
    expect(await ask(await approvedTable({ rows: rows.slice(1) }))).toMatchObject(calculationRefuses('not-in-table'));
    expect(await ask(await approvedTable({ boltGrade: 'B16' }))).toMatchObject(
      calculationRefuses('table-of-other-grade'),
    );
    expect(await ask(uuidv7())).toMatchObject(calculationRefuses('table-unknown'));
  });
});

describe('a target for another gasket', () => {
  it('is not computed, and the refusal names both families', async () => {
    const graphite = { ...specification().gasket, family: 'graphite-sheet' as const };
    const tale = await taleTo(shutdown, 'procedure assigned', { specification: specification({ gasket: graphite }) });
    const response = await tale.say('target-approved');
    expect(response).toMatchObject(calculationRefuses('other-gasket-family'));
    expect(response.body.detail).toMatch(/spiral-wound.*graphite-sheet/);
  });
});

describe('maker’s torque', () => {
  it('is entered with its source where nothing is computed, and is what the passes are set to', async () => {
    const tale = await taleTo(shutdown, 'procedure assigned', { kind: 'clamp-connector' });
    const payload: Payload<'target-approved'> = {
      basis: 'makers-torque',
      torque_Nm: 400,
      torqueAsEntered: { value: 295, unit: 'lbf·ft' },
      lubricant: 'test paste',
      source: 'maker’s manual, sheet 7',
    };
    await tale.tell('target-approved', { payload });
    expect((await tale.make()).target).toMatchObject({ torque_Nm: 400, sources: ['maker’s manual, sheet 7'] });
    await tale.goOn('nipped up', 'engineered');
    const wrong = { torque_Nm: 200, asEntered: { value: 200, unit: 'N·m' } };
    expect(refusedBy(await tale.say('pass-recorded', { change: { set: wrong } }))).toEqual(['passes.set-as-target']);
    await tale.goOn('tight', 'nipped up');
    expect(await tale.stage()).toBe('tight');
  });
});

describe('computed loads chosen with the target', () => {
  const choice = (
    tightening: NonNullable<Extract<Payload<'target-approved'>, { basis: 'calculated' }>['tightening']>,
    boltStress_MPa: number | null = 200,
  ): Payload<'target-approved'> => ({
    basis: 'calculated',
    gasketDataId: shutdown.gasketDataId,
    lubricantId: shutdown.lubricantId,
    boltStress_MPa,
    acceptedShortfall: null,
    tightening,
  });
  const computed = { way: 'computed-loads', toolDivision_Nm: 5, setValues: 3 } as const;

  it('are kept as set values of each pass, and the passes are recorded by them', async () => {
    const tale = await taleTo(shutdown, 'procedure assigned');
    await tale.tell('target-approved', { payload: choice(computed) });
    const { target } = await tale.make();
    const plan = target?.tightening;
    if (plan?.way !== 'computed-loads') throw new Error('no computed loads were kept');
    for (const { setValues_Nm, steps } of plan.passes) {
      expect(setValues_Nm.length).toBeLessThanOrEqual(3);
      for (const value of setValues_Nm) {
        expect(value % 5).toBeCloseTo(0, 9);
        expect(value / (target?.torque_Nm ?? 0)).toBeLessThanOrEqual(plan.cap_percent / 100 + 1e-9);
      }
      expect(steps.map(({ bolt }) => bolt)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    }
    expect(plan.movesSaved).toBeGreaterThan(0);
    await tale.goOn('nipped up', 'engineered');
    const wrong = { torque_Nm: 110, asEntered: { value: 110, unit: 'N·m' } };
    expect(refusedBy(await tale.say('pass-recorded', { change: { set: wrong } }))).toEqual(['passes.set-as-target']);
    for (const [index, { setValues_Nm }] of plan.passes.entries()) {
      const torque_Nm = setValues_Nm.at(-1) ?? 0;
      const set = { torque_Nm, asEntered: { value: torque_Nm, unit: 'N·m' } };
      await tale.tell('pass-recorded', { change: { pass: index + 1, set } });
    }
    expect((await tale.make()).nextPass).toBe(plan.passes.length + 1);
    await tale.tell('final-round-recorded');
    expect(await tale.stage()).toBe('tight');
  });

  it('are refused where the cap leaves nothing to gain, and where the pattern is another procedure’s', async () => {
    const tale = await taleTo(shutdown, 'procedure assigned');
    const atTheLimit = choice(computed, 495);
    expect(await tale.say('target-approved', { payload: atTheLimit })).toMatchObject(
      calculationRefuses('cap-leaves-nothing-to-gain'),
    );
    expect(
      await tale.say('target-approved', { payload: choice({ way: 'pattern', pattern: 'quadrant' }) }),
    ).toMatchObject(calculationRefuses('pattern-of-other-procedure'));
    await tale.tell('target-approved', { payload: choice({ way: 'pattern', pattern: 'legacy' }) });
    expect((await tale.make()).target?.tightening).toEqual({ way: 'pattern', pattern: 'legacy' });
  });
});

describe('a shortfall', () => {
  it('is accepted with a reason, and the reason stays with the target', async () => {
    const tale = await taleTo(shutdown, 'procedure assigned');
    const low = {
      basis: 'calculated' as const,
      gasketDataId: shutdown.gasketDataId,
      lubricantId: shutdown.lubricantId,
      boltStress_MPa: 30,
    };
    expect(refusedBy(await tale.say('target-approved', { payload: { ...low, acceptedShortfall: null } }))).toEqual([
      'engineered.target-window',
    ]);
    await tale.tell('target-approved', { payload: { ...low, acceptedShortfall: 'Vent line, 1 bar' } });
    expect((await tale.make()).target).toMatchObject({ insideWindow: false, shortfallReason: 'Vent line, 1 bar' });
  });
});

describe('a deviation', () => {
  it('accepted by QC within its band lets the nip-up pass, which then carries it as a flag', async () => {
    const tale = await taleTo(shutdown, 'faces accepted');
    const skew = { change: { alignment: { ...nippedUp(shutdown).alignment, offset_mm: 1.8 } } };
    expect(refusedBy(await tale.say('nipped-up', skew))).toEqual(['nipped-up.alignment']);
    await tale.tell('deviation-accepted', { change: { reason: 'Measured on both sides' } });
    const answer = await tale.tell('nipped-up', skew);
    expect(answer.failed).toEqual([expect.objectContaining({ rule: 'nipped-up.alignment', severity: 'flag' })]);
    expect((await tale.make()).deviations).toMatchObject([
      { rule: 'nipped-up.alignment', reason: 'Measured on both sides' },
    ]);
  });

  it('that ended yesterday lets nothing pass', async () => {
    const tale = await taleTo(shutdown, 'faces accepted');
    const until = new Date(shutdown.plant.now.getTime() - 86_400_000).toISOString().slice(0, 10);
    await tale.tell('deviation-accepted', { change: { until } });
    const skew = { change: { alignment: { ...nippedUp(shutdown).alignment, offset_mm: 1.8 } } };
    expect(refusedBy(await tale.say('nipped-up', skew))).toEqual(['nipped-up.alignment']);
  });
});
