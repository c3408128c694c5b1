import type { JointState } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import type { DecisionInput } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import type { FactsLoader } from './facts.ts';
import { jointHistory } from './joint-store.ts';

/** More than this nobody reads: the joint is looked at again anyhow. */
const SHOWN = 20;

/**
 * Refuses a decision on a joint that has moved on since its maker saw it, and says what was recorded since.
 * @throws Problem `stale-decision` always; `changed` holds the events, oldest first, at most twenty
 */
export async function refuseStale(
  input: DecisionInput,
  facts: FactsLoader,
  joint: JointState,
  versionSeen: number | null,
): Promise<never> {
  const item = { path: 'versionSeen', code: 'stale', message: joint.tag, limit: joint.version };
  if (versionSeen === null)
    throw new Problem(
      'stale-decision',
      `A decision on ${joint.tag} must say which version was seen; it is at ${joint.version}.`,
      [item],
      { changed: [] },
    );
  const { siteId, shutdownId } = shutdownOf(input);
  const since = (await jointHistory(input.tx, siteId, shutdownId, joint.jointId)).slice(versionSeen).slice(-SHOWN);
  const persons = await facts.persons(since.flatMap((event) => event.recordedByPersonId ?? []));
  const changed = since.map(({ eventId, type, makeId, recordedAt, recordedByPersonId }) => ({
    eventId,
    type,
    makeId,
    recordedAt,
    recordedBy: persons[recordedByPersonId ?? '']?.name ?? null,
  }));
  throw new Problem(
    'stale-decision',
    `${joint.tag} is at version ${joint.version}, you saw ${versionSeen}. Look at it again and decide anew.`,
    [item],
    { changed },
  );
}
