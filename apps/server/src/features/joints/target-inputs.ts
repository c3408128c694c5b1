import type { JointState, MakeState, ProcedureFacts } from '@seatwell/workflow';
import { targetInputsHash } from '../engineering/target-hash.ts';
import type { FactsLoader } from './facts.ts';

/** Hash of the inputs of a make's target as they stand now; null where there is no target. */
export async function inputsHashNow(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  procedure: ProcedureFacts | null,
): Promise<string | null> {
  const { target } = make;
  if (!target) return null;
  if (target.basis === 'makers-torque') return targetInputsHash(joint, make, procedure, [null]);
  const hashes = await Promise.all(
    [target.gasketDataId, target.lubricantId].map(async (dataId) =>
      dataId ? ((await facts.sourcedData(dataId))?.hash ?? null) : null,
    ),
  );
  return targetInputsHash(joint, make, procedure, hashes);
}
