import type { targetWindow } from '@seatwell/calc';
import type { Payload } from '@seatwell/contract';
import type { JointState, MakeState, TargetEvidence } from '@seatwell/workflow';
import type { FactsLoader } from '../joints/facts.ts';
import { calculatedTarget } from './calculated-target.ts';
import { makersTorque } from './makers-torque.ts';
import { rowOfTable } from './table-row.ts';

type Choice = Payload<'target-approved'>;

/**
 * The target that a choice of the engineer leads to, as the record keeps it.
 * @throws Problem `calculation-refused` naming joint, input and remedy
 */
export async function computeTarget(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  choice: Choice,
): Promise<TargetEvidence> {
  switch (choice.basis) {
    case 'calculated':
      return (await calculatedTarget(facts, joint, make, choice, 'calculated', null)).evidence;
    case 'target-table': {
      const row = await rowOfTable(facts, joint, make, choice.tableId);
      return (await calculatedTarget(facts, joint, make, row, 'target-table', choice.tableId)).evidence;
    }
    case 'makers-torque':
      return makersTorque(facts, joint, make, choice);
  }
}

/** The whole answer with its working, before anything is approved. */
export async function previewTarget(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  choice: Choice,
): Promise<{ evidence: TargetEvidence; answer: ReturnType<typeof targetWindow> | null }> {
  if (choice.basis === 'calculated') return calculatedTarget(facts, joint, make, choice, 'calculated', null, true);
  if (choice.basis === 'makers-torque')
    return { evidence: await makersTorque(facts, joint, make, choice), answer: null };
  return calculatedTarget(
    facts,
    joint,
    make,
    await rowOfTable(facts, joint, make, choice.tableId),
    'target-table',
    choice.tableId,
    true,
  );
}
