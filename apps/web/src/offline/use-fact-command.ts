import type { CommandAnswer, ShutdownEventType, ShutdownPayload } from '@seatwell/contract';
import { useMutation } from '@tanstack/react-query';
import { ApiProblem } from '../app/api-problem.ts';
import { clockOffset_ms } from '../app/clock-offset.ts';
import { newId, type SignatureInput } from '../app/send-command.ts';
import { useMe } from '../app/session.ts';
import { useShutdownId } from '../app/use-shutdown.ts';
import { outbox } from './outbox.ts';
import type { QueuedFact } from './queued-fact.ts';

export interface FactInput<Payload> {
  readonly subjectId: string;
  readonly makeId?: string | null;
  readonly payload: Payload;
  /** what a person knows it by */
  readonly label: string;
  /** the joint that it is about, where it is about one: its facts keep their order */
  readonly lane?: string;
  readonly eventId?: string;
  readonly performedBy?: readonly string[];
  readonly alreadyDone?: boolean;
  readonly paperForm?: string;
  readonly signature?: SignatureInput;
  readonly at?: Date;
}

/** What became of a fact: the record's answer, or that it waits on this device. */
export type FactAnswer = CommandAnswer | { readonly disposition: 'waiting' };

/** A fact as the outbox keeps it. */
export function queued<T extends ShutdownEventType>(
  whose: { readonly accountId: string; readonly shutdownId: string },
  type: T,
  input: FactInput<ShutdownPayload<T>>,
): QueuedFact {
  const eventId = input.eventId ?? newId();
  return {
    ...whose,
    eventId,
    type,
    lane: input.lane ?? input.subjectId,
    label: input.label,
    command: {
      eventId,
      v: 1,
      subjectId: input.subjectId,
      makeId: input.makeId ?? null,
      deviceTime: (input.at ?? new Date()).toISOString(),
      clockOffset_ms: clockOffset_ms(),
      device: navigator.userAgent.slice(0, 120),
      performedBy: input.performedBy ?? [],
      versionSeen: null,
      alreadyDone: input.alreadyDone ?? false,
      paperForm: input.paperForm ?? null,
      signature: null,
      payload: input.payload,
    },
    // The secret of a signature is never kept: it goes with the first try, or is asked for again.
    state: input.signature ? 'to-sign' : 'waiting',
    problem: null,
    meaning: input.signature?.meaning ?? null,
  };
}

/**
 * Records a fact of the shutdown in the address by way of the outbox: it is on the device before it is sent, and
 * stays there until the server has given its final answer.
 */
export function useFactCommand<T extends ShutdownEventType>(type: T) {
  const shutdownId = useShutdownId();
  const { accountId } = useMe();
  return useMutation({
    networkMode: 'always',
    mutationFn: async (input: FactInput<ShutdownPayload<T>>): Promise<FactAnswer> => {
      const fact = queued({ accountId, shutdownId }, type, input);
      const said = input.signature ? await outbox.saySigned(fact, input.signature.secret) : await outbox.say(fact);
      if (said.kind === 'recorded') return said.answer;
      if (said.kind === 'waiting') return { disposition: 'waiting' };
      throw new ApiProblem(said.problem);
    },
  });
}
