import { CalcRefusal } from '@seatwell/calc';
import type { JointState, MakeState, ProcedureFacts } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import type { FactsLoader } from '../joints/facts.ts';

/** A refusal of the calculation that names its joint. */
export const refused = (joint: JointState, code: string, message: string): Problem =>
  new Problem('calculation-refused', `${joint.tag}: ${message}`, [
    { path: 'payload', code, message, joint: joint.tag },
  ]);

/** @throws Problem `calculation-refused` that names the joint, from a refusal of the calculation */
export function withJoint<T>(joint: JointState, calculate: () => T): T {
  try {
    return calculate();
  } catch (error) {
    if (!(error instanceof CalcRefusal)) throw error;
    throw new Problem(
      'calculation-refused',
      `${joint.tag}: ${error.message}`,
      error.errors.map((item) => ({ ...item, joint: joint.tag })),
    );
  }
}

/** @throws Problem `calculation-refused` where no procedure is assigned to the make */
export async function procedureOf(facts: FactsLoader, joint: JointState, make: MakeState): Promise<ProcedureFacts> {
  const assigned = make.procedure;
  const procedure = assigned ? await facts.procedure(assigned.procedureId, assigned.revision) : null;
  if (!procedure) throw refused(joint, 'procedure-missing', 'assign an approved procedure before a target is set.');
  return procedure;
}

/** Entered data with its source. @throws Problem `calculation-refused` where the site has none of that kind and id */
export async function dataOf<T>(
  facts: FactsLoader,
  joint: JointState,
  dataId: string,
  kind: string,
): Promise<{ content: T; name: string; hash: string }> {
  const data = await facts.sourcedData(dataId);
  if (data?.kind !== kind) throw refused(joint, `${kind}-unknown`, `there is no ${kind} ${dataId} at this site.`);
  return { content: data.content as T, name: data.name, hash: data.hash };
}
