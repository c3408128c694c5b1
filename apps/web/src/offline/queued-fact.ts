import type { ShutdownEventType } from '@seatwell/contract';
import type { ApiProblemItem } from '../app/api-problem.ts';

/** Why the server did not take a fact, as it is kept for whoever looks at it later. */
export interface KeptProblem {
  readonly code: string;
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  readonly items: readonly ApiProblemItem[];
}

/** The command as it is sent at every try: nothing in it is taken from the moment of the try. */
export interface KeptCommand {
  readonly eventId: string;
  readonly v: 1;
  readonly subjectId: string;
  readonly makeId: string | null;
  readonly deviceTime: string;
  /** as measured when it was said: a repeat under the same id must be the same to the letter */
  readonly clockOffset_ms: number;
  readonly device: string;
  readonly performedBy: readonly string[];
  readonly versionSeen: null;
  readonly alreadyDone: boolean;
  /** photo of the paper that the work was written on first */
  readonly paperForm: string | null;
  readonly signature: { readonly secret: string; readonly meaning: string } | null;
  readonly payload: unknown;
}

/** A fact that was said to be done and whose final answer has not come. */
export interface QueuedFact {
  readonly eventId: string;
  /** whose it is: on a shared device each person sends their own */
  readonly accountId: string;
  readonly shutdownId: string;
  readonly type: ShutdownEventType;
  /** the joint, or what else it is about: facts of one lane are sent in the order in which they were said */
  readonly lane: string;
  /** what a person knows it by: the joint's tag, the blind's number */
  readonly label: string;
  readonly command: KeptCommand;
  /** waiting = to be sent; refused = a person has to say what becomes of it; to-sign = the secret is asked for first */
  readonly state: 'waiting' | 'refused' | 'to-sign';
  readonly problem: KeptProblem | null;
  /** meaning of the signature that is still to be given */
  readonly meaning: string | null;
}

/** Facts in the order in which they were said: their ids are made in that order (UUIDv7). */
export const inOrder = (facts: readonly QueuedFact[]): readonly QueuedFact[] =>
  [...facts].sort((a, b) => (a.eventId < b.eventId ? -1 : a.eventId > b.eventId ? 1 : 0));

/**
 * The facts that can be sent now: the first of each lane, and only if nothing stands before it. What follows a
 * refused fact was done on top of it, and waits.
 */
export function sendable(facts: readonly QueuedFact[]): readonly QueuedFact[] {
  const lanes = new Set<string>();
  return inOrder(facts).filter((fact) => {
    const first = !lanes.has(fact.lane);
    lanes.add(fact.lane);
    return first && fact.state === 'waiting';
  });
}

/** The fact itself and what was said on top of it in the same lane: they are taken back together. */
export function withWhatFollows(facts: readonly QueuedFact[], eventId: string): readonly QueuedFact[] {
  const fact = facts.find((each) => each.eventId === eventId);
  if (!fact) return [];
  return inOrder(facts).filter((each) => each.lane === fact.lane && each.eventId >= eventId);
}

/** The fact as one that is done and cannot be undone: it is sent again under its own id. */
export const asAlreadyDone = (fact: QueuedFact): QueuedFact => ({
  ...fact,
  state: 'waiting',
  problem: null,
  command: { ...fact.command, alreadyDone: true },
});

/** The fact with each photo named as the server names it: it keeps photos under a hash of its own making. */
export function withPhotos(fact: QueuedFact, stored: ReadonlyMap<string, string>): QueuedFact {
  const named = (value: unknown): unknown => {
    if (typeof value === 'string') return stored.get(value) ?? value;
    if (Array.isArray(value)) return value.map(named);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, named(each)]));
  };
  const { payload, paperForm } = fact.command;
  const form = paperForm === null ? null : (stored.get(paperForm) ?? paperForm);
  return { ...fact, command: { ...fact.command, payload: named(payload), paperForm: form } };
}

/** Every text in a payload that may be a photo's hash. */
export function hashesIn(payload: unknown): readonly string[] {
  if (typeof payload === 'string') return /^[0-9a-f]{64}$/.test(payload) ? [payload] : [];
  if (typeof payload !== 'object' || payload === null) return [];
  return Object.values(payload).flatMap(hashesIn);
}
