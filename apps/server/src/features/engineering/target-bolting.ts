import type { TargetRequest } from '@seatwell/calc';
import type { ProcedureContent } from '@seatwell/contract';
import { type JointState, type MakeState, procedureBolting, type TargetBolts } from '@seatwell/workflow';

/** Whether a make goes together with new bolts: as inspected, else as the procedure says, else new. */
export const conditionOf = (make: MakeState, { bolts }: ProcedureContent): 'new' | 'reused' =>
  make.boltingCondition ?? bolts?.condition ?? 'new';

/** The bolting of a make: count, thread and grade of the register, the rest of the procedure. */
export function targetBolting(
  joint: JointState,
  make: MakeState,
  procedure: ProcedureContent,
  grade: string,
): TargetRequest['bolting'] {
  return {
    grade,
    ...(joint.bolting ? { thread: joint.bolting.thread, count: joint.bolting.count } : {}),
    condition: conditionOf(make, procedure),
    ...procedureBolting(procedure.bolts),
  };
}

/** What a target keeps of its bolts; nothing where the procedure says nothing of them. */
export function targetBolts({ bolts }: ProcedureContent): { readonly bolts?: TargetBolts } {
  if (!bolts) return {};
  return { bolts: { coating: bolts.coating?.name ?? null, washersPerBolt: bolts.washers?.perBolt ?? 0 } };
}

/** Where the data of the bolts are from. */
export const boltSources = ({ bolts }: ProcedureContent): readonly string[] =>
  [bolts?.coating?.source, bolts?.material?.source].flatMap((source) => (source ? [source] : []));
