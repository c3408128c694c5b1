import type { JointSpecification, Payload, ProcedureBolts } from '@seatwell/contract';
import type { TargetEvidence } from '@seatwell/workflow';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { procedureWith, steelBolts } from '../support/bolts.ts';
import { specification } from '../support/sample-plant.ts';
import { type ListedJoint, listJoint, openShutdown, type Shutdown } from '../support/shutdown.ts';
import { makeState, onMake } from '../support/work.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown?.close());

const target = (): Payload<'target-approved'> => ({
  basis: 'calculated',
  gasketDataId: shutdown.gasketDataId,
  lubricantId: shutdown.lubricantId,
  boltStress_MPa: 250,
  acceptedShortfall: null,
});

let procedures = 0;

/** A joint of this description with a procedure of its own that says what the bolts are, or that of the tests. */
async function assigned(change: Partial<JointSpecification> = {}, bolts?: ProcedureBolts): Promise<ListedJoint> {
  procedures += 1;
  const procedureId = bolts ? await procedureWith(shutdown, `BP-L${procedures}`, { bolts }) : shutdown.procedureId;
  const joint = await listJoint(shutdown, { specification: specification(change) });
  await onMake(shutdown, joint).must(shutdown.engineer, 'procedure-assigned', { procedureId, revision: 1 });
  return joint;
}

async function approved(joint: ListedJoint): Promise<TargetEvidence> {
  await onMake(shutdown, joint).must(shutdown.engineer, 'target-approved', target());
  const kept = (await makeState(shutdown, joint)).target;
  if (!kept) throw new Error('No target was kept.');
  return kept;
}

const refusal = async (joint: ListedJoint): Promise<string | undefined> =>
  (await onMake(shutdown, joint).send(shutdown.engineer, 'target-approved', target())).body.errors?.[0]?.code;

const limitsNotChecked = ({ notChecked = [] }: TargetEvidence) => notChecked.map(({ limit }) => limit);

describe('what the procedure says of the bolts', () => {
  it('is kept with the target, with condition, coating, washers and the sources', async () => {
    const coating = { name: 'nickel-zinc', maximum_C: 250, source: 'maker of the coating' };
    const washers = { perBolt: 1, insideDiameter_mm: 23.8, outsideDiameter_mm: 44.5, thickness_mm: 4 } as const;
    const kept = await approved(await assigned({}, { ...steelBolts, condition: 'reused', coating, washers }));
    expect(kept).toMatchObject({ boltCondition: 'reused', bolts: { coating: 'nickel-zinc', washersPerBolt: 1 } });
    expect(kept.sources).toEqual(expect.arrayContaining(['maker of the coating', 'test steel']));
    expect(limitsNotChecked(kept)).not.toContain('coating-temperature');
    expect(limitsNotChecked(kept)).not.toContain('nut-bearing');
  });

  it('refuses a joint that is too hot for the coating', async () => {
    const coated = { ...steelBolts, coating: { name: 'cadmium', maximum_C: null, source: null } };
    const { service } = specification();
    expect(await refusal(await assigned({ service: { ...service, temperature_C: 200 } }, coated))).toBe(
      'coating-too-hot',
    );
    expect(await refusal(await assigned({ service: { ...service, temperature_C: 120 } }, coated))).toBeUndefined();
  });

  it('is told as not checked where the procedure says nothing', async () => {
    const kept = await approved(await assigned());
    expect(kept.notChecked).toEqual(
      expect.arrayContaining([
        { limit: 'coating-temperature', missing: ['coating'] },
        { limit: 'nut-bearing', missing: ['washers'] },
      ]),
    );
    expect(kept).not.toHaveProperty('bolts');
    expect(kept.boltCondition).toBe('new');
  });
});
