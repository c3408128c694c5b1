import type { JointState, MakeState, MergedWork, RecordedEvent } from '../state.ts';
import { WORK } from './work.ts';

const isWork = (event: RecordedEvent): boolean => Object.hasOwn(WORK, event.type);

const ON_WORK: readonly string[] = ['corrected', 'revoked', 'review-settled', 'hold-placed', 'hold-released'];

/** Whether the crew did anything on a make: nobody may lose it. */
export const isWorkedOn = (make: MakeState): boolean =>
  !make.cancelled &&
  (make.openedAt !== null || make.fitted !== null || make.passes.length > 0 || make.waiting.length > 0 || make.leaking);

/**
 * What a found joint gives to the joint of the register that it is: the events of its make and the holds on it. They
 * go into the evidence of the merge, so that the joint of the register folds from its own events alone.
 *
 * @param history every event of the found joint, those that it was given by an earlier merge included
 * @param makeId the make of the found joint that was worked on; null when there was no work
 * @param intoMakeId the make of the register's joint that the work was
 */
export function mergedWork(
  found: JointState,
  history: readonly RecordedEvent[],
  makeId: string | null,
  intoMakeId: string | null,
): MergedWork {
  return {
    jointId: found.jointId,
    tag: found.tag,
    photo: found.found?.photo ?? null,
    makeId,
    intoMakeId,
    events: withMerged(history).filter(
      (event) => ON_WORK.includes(event.type) || (makeId !== null && isWork(event) && event.makeId === makeId),
    ),
  };
}

const workOf = (event: RecordedEvent): MergedWork | null =>
  event.type === 'joint-merged' ? (event.evidence.merged ?? null) : null;

/**
 * The events of a joint with those that merges gave it in their places. What was planned for the make before (its
 * procedure, target and release) gives way to what was really done.
 */
export function withMerged(events: readonly RecordedEvent[]): readonly RecordedEvent[] {
  const merges = events.filter((event) => workOf(event) !== null);
  if (merges.length === 0) return events;
  const givesWay = (event: RecordedEvent): boolean =>
    isWork(event) &&
    merges.some((merge) => {
      const work = workOf(merge);
      return work?.makeId != null && work.intoMakeId === event.makeId && event.sequence < merge.sequence;
    });
  const given = merges.flatMap((merge) => {
    const work = workOf(merge);
    return (work?.events ?? []).map((event) => ({
      ...event,
      jointId: merge.jointId,
      makeId: event.makeId !== null && event.makeId === work?.makeId ? work.intoMakeId : event.makeId,
    }));
  });
  return [...events.filter((event) => !givesWay(event)), ...given];
}
