import type { ShutdownPayload } from '@seatwell/contract';
import { useCallback, useEffect, useMemo, useReducer, useState } from 'react';
import { useMe } from '../../app/session.ts';
import { outbox } from '../../offline/outbox.ts';
import type { QueuedFact } from '../../offline/queued-fact.ts';
import { queued } from '../../offline/use-fact-command.ts';
import { useQueuedOn } from '../../offline/use-outbox.ts';
import type { Job } from '../work/job.ts';
import { type DraftAction, reduceTaps, type TighteningDraft, type WaitingFact } from './draft.ts';
import { readTaps, writeTaps } from './draft-store.ts';

const tightening: readonly string[] = ['pass-recorded', 'final-round-recorded', 'relaxation-pass-recorded'];

/** The tightening of a make as this device keeps it: taps, and what was said to be done and is on its way. */
export function useDraft(job: Job): {
  draft: TighteningDraft;
  change: (action: DraftAction) => void;
  /** calls a round done: it is on the device before the taps are let go */
  say: (fact: WaitingFact) => void;
  /** what this device has to send about the make, in order */
  facts: readonly QueuedFact[];
  /** false where the device has no storage: a reload would lose the taps */
  kept: boolean;
} {
  const { makeId } = job.make;
  const { jointId, tag } = job.joint;
  const { shutdownId } = job;
  const { accountId } = useMe();
  const [taps, change] = useReducer(reduceTaps, makeId, readTaps);
  const [kept, setKept] = useState(true);
  const onJoint = useQueuedOn(jointId);
  const facts = useMemo(
    () => onJoint.filter((fact) => fact.command.makeId === makeId && tightening.includes(fact.type)),
    [onJoint, makeId],
  );
  const draft = useMemo(() => ({ ...taps, waiting: facts.map(waitingOf) }), [taps, facts]);
  useEffect(() => {
    setKept(writeTaps(makeId, taps));
  }, [makeId, taps]);
  const say = useCallback(
    async (fact: WaitingFact) => {
      const { type, payload, performedBy, eventId } = fact;
      const input = { subjectId: jointId, makeId, label: tag, payload, performedBy, eventId, at: new Date(fact.at) };
      const said = queued({ accountId, shutdownId }, type, input);
      await outbox.keep({ ...said, command: { ...said.command, clockOffset_ms: fact.clockOffset_ms } });
      change({ kind: 'drop' });
      await outbox.flush();
    },
    [accountId, shutdownId, jointId, makeId, tag],
  );
  return { draft, change, say, facts, kept };
}

const waitingOf = ({ eventId, type, command }: QueuedFact): WaitingFact => ({
  eventId,
  type: type as WaitingFact['type'],
  payload: command.payload as ShutdownPayload<WaitingFact['type']>,
  performedBy: command.performedBy,
  at: command.deviceTime,
  clockOffset_ms: command.clockOffset_ms,
  alreadyDone: command.alreadyDone,
});
