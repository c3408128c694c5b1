import type { Payload, ProcedureBolts } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { procedureWith, steelBolts } from '../support/bolts.ts';
import { qualifyAndBrief } from '../support/briefing.ts';
import { refusedBy } from '../support/plant.ts';
import { specification } from '../support/sample-plant.ts';
import { passesSetBy } from '../support/set-work.ts';
import { listJoint, openShutdown, registerTool, type Shutdown } from '../support/shutdown.ts';
import { makeState, onMake, openAndNipUp, release } from '../support/work.ts';

let shutdown: Shutdown;
let procedureId: string;
let lengthGaugeId: string;

beforeAll(async () => {
  shutdown = await openShutdown();
  procedureId = await stretchingProcedure('BP-EL', steelBolts);
  await qualifyAndBrief(shutdown, procedureId, 'elongation');
  lengthGaugeId = uuidv7();
  await registerTool(shutdown.plant, shutdown.inspector, lengthGaugeId, 'LG-1', 'length-gauge', 25, 'mm');
});
afterAll(() => shutdown?.close());

const stretchingProcedure = (code: string, bolts: ProcedureBolts | null) =>
  procedureWith(shutdown, code, { method: 'elongation', passPercents: [50, 100], bolts });

const target = (): Payload<'target-approved'> => ({
  basis: 'calculated',
  gasketDataId: shutdown.gasketDataId,
  lubricantId: shutdown.lubricantId,
  boltStress_MPa: 250,
  acceptedShortfall: null,
});

async function assigned(options: Parameters<typeof listJoint>[1] = {}, procedure = procedureId) {
  const joint = await listJoint(shutdown, options);
  await onMake(shutdown, joint).must(shutdown.engineer, 'procedure-assigned', { procedureId: procedure, revision: 1 });
  return joint;
}

describe('a joint whose bolts are stretched to a length', () => {
  it('keeps the elongation of each pass with its length and modulus, and is tightened by it', async () => {
    const joint = await assigned();
    const { must, send } = onMake(shutdown, joint);
    await must(shutdown.engineer, 'target-approved', target());
    const kept = (await makeState(shutdown, joint)).target;
    const { elongation_mm = 0, effectiveLength_mm = 0, elasticModulus_MPa = 0 } = kept?.elongation ?? {};
    expect(elasticModulus_MPa).toBe(204_000);
    // 83.9 mm between the nuts and the height of one, about a diameter (7/8 in): Hooke, the stress on the tensile area.
    expect(effectiveLength_mm).toBeGreaterThan(83.9 + 21);
    expect(effectiveLength_mm).toBeLessThan(83.9 + 22.6);
    expect(elongation_mm).toBeCloseTo((250 * effectiveLength_mm) / 204_000, 9);
    expect(kept?.passes).toEqual([
      { percent: 50, torque_Nm: null, pressure_MPa: null, elongation_mm: expect.closeTo(elongation_mm / 2, 9) },
      { percent: 100, torque_Nm: null, pressure_MPa: null, elongation_mm: expect.closeTo(elongation_mm, 9) },
    ]);
    expect(kept?.sources).toContain('test steel');

    await release(shutdown, joint);
    await openAndNipUp(shutdown, joint);
    const by = { performedBy: [shutdown.technician.personId, shutdown.mate.personId] };
    const { work, pass } = passesSetBy(
      shutdown,
      { toolId: lengthGaugeId, pumpId: null, gaugeId: null },
      (elongation_mm) => ({
        elongation_mm,
        asEntered: { value: elongation_mm, unit: 'mm' },
      }),
    );
    const tooFar = await send(shutdown.technician, 'pass-recorded', pass(1, elongation_mm), by);
    expect(refusedBy(tooFar)).toEqual(['passes.set-as-target']);
    await must(shutdown.technician, 'pass-recorded', pass(1, elongation_mm / 2), by);
    await must(shutdown.technician, 'pass-recorded', pass(2, elongation_mm), by);
    await must(shutdown.technician, 'final-round-recorded', { ...work(elongation_mm), rounds: 1, nutMoved: false }, by);
    expect((await makeState(shutdown, joint)).stage).toBe('tight');
  });
});

describe('there is no elongation, and the refusal says what is missing', () => {
  const refusal = async (options: Parameters<typeof listJoint>[1], procedure = procedureId, payload = target()) => {
    const joint = await assigned(options, procedure);
    const { body } = await onMake(shutdown, joint).send(shutdown.engineer, 'target-approved', payload);
    return { code: body.errors?.[0]?.code as string, detail: body.detail as string };
  };

  it('without the thickness of every clamped part', async () => {
    const [first, ...rest] = specification().clampedParts;
    const unknown = specification({ clampedParts: [{ ...first!, thickness_mm: null }, ...rest] });
    const { code, detail } = await refusal({ specification: unknown });
    expect(code).toBe('clamped-thickness-missing');
    expect(detail).toContain('Enter them in the register');
    expect((await refusal({ specification: specification({ clampedParts: [] }) })).code).toBe(code);
  });

  it('without the modulus of the bolts in the procedure', async () => {
    expect((await refusal({}, await stretchingProcedure('BP-EL-0', null))).code).toBe('bolt-modulus-missing');
    const unsaid = await stretchingProcedure('BP-EL-1', { ...steelBolts, material: null });
    expect((await refusal({}, unsaid)).code).toBe('bolt-modulus-missing');
  });

  it('by a maker’s torque', async () => {
    const { code } = await refusal({}, procedureId, {
      basis: 'makers-torque',
      torque_Nm: 400,
      torqueAsEntered: { value: 400, unit: 'N·m' },
      lubricant: 'test paste',
      source: 'maker’s manual',
    });
    expect(code).toBe('torque-not-for-elongation');
  });
});
