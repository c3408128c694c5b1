import type { CommandAnswer } from '@seatwell/contract';
import type { ApiProblem } from '../app/api-problem.ts';
import { dropFact, keepFact, keptFacts } from './device-store.ts';
import { asAlreadyDone, inOrder, type KeptProblem, type QueuedFact, sendable, withWhatFollows } from './queued-fact.ts';
import { type Sent, sendFact } from './send-fact.ts';

export interface OutboxState {
  /** facts of the person who is signed in, in the order in which they were said */
  readonly facts: readonly QueuedFact[];
  /** ids of facts whose form still waits for the answer: until it comes they stand in the form, not in the list */
  readonly inHand: ReadonlySet<string>;
  readonly sending: boolean;
  /** the last try heard nothing */
  readonly silent: boolean;
  /** false where the device keeps nothing: a reload would lose what waits */
  readonly kept: boolean;
}

export type Said =
  | { readonly kind: 'recorded'; readonly answer: CommandAnswer }
  | { readonly kind: 'refused'; readonly problem: KeptProblem }
  | { readonly kind: 'waiting' };

// A line that comes back is often still shaky: soon again at first, then every ten seconds.
const again_ms = [1_500, 3_000, 6_000, 10_000];
const empty: OutboxState = { facts: [], inHand: new Set(), sending: false, silent: false, kept: true };

/** Facts on their way to the record: kept on the device until the server has given its final answer to each. */
export class Outbox {
  #state: OutboxState = empty;
  #accountId: string | null = null;
  #flushing: Promise<void> | null = null;
  #again = false;
  #silentTries = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #listeners = new Set<() => void>();
  readonly #outcomes = new Map<string, Said>();
  /** called before a recorded fact leaves the list, so that screens know it from the record by then */
  onRecorded: (fact: QueuedFact, answer: CommandAnswer) => Promise<unknown> = () => Promise.resolve();

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };
  readonly state = (): OutboxState => this.#state;

  /** Takes up what a person left on this device, and sends it. */
  async open(accountId: string): Promise<void> {
    this.#accountId = accountId;
    await this.#reload();
    await this.flush();
  }

  /** At sign-out: what waits stays on the device until the person signs in again. */
  close(): void {
    this.#accountId = null;
    clearTimeout(this.#timer);
    this.#change(empty);
  }

  /** Keeps a fact on the device, so that it may be called done. */
  async keep(fact: QueuedFact): Promise<void> {
    const { facts } = this.#state;
    const others = facts.filter((each) => each.eventId !== fact.eventId);
    try {
      await keepFact(fact);
    } catch {
      this.#change({ kept: false });
    }
    this.#change({ facts: inOrder([...others, fact]) });
  }

  /** Keeps a fact, sends it where there is a connection, and says what became of it. */
  async say(fact: QueuedFact): Promise<Said> {
    return this.#inHand(fact.eventId, async () => {
      await this.keep(fact);
      await this.flush();
      return this.#outcomes.get(fact.eventId) ?? { kind: 'waiting' };
    });
  }

  /** Keeps a fact and sends it with its signature, unless something stands before it on the same joint. */
  async saySigned(fact: QueuedFact, secret: string): Promise<Said> {
    return this.#inHand(fact.eventId, async () => {
      await this.keep(fact);
      await this.flush();
      const { facts } = this.#state;
      const before = facts.some((each) => each.lane === fact.lane && each.eventId < fact.eventId);
      return before ? { kind: 'waiting' } : this.sign(fact.eventId, secret);
    });
  }

  /** A refused fact goes back to its form: it is said anew from there. */
  async #inHand(eventId: string, work: () => Promise<Said>): Promise<Said> {
    this.#change({ inHand: new Set([...this.#state.inHand, eventId]) });
    try {
      const said = await work();
      if (said.kind === 'refused') await this.withdraw(eventId);
      return said;
    } finally {
      this.#outcomes.delete(eventId);
      this.#change({ inHand: new Set([...this.#state.inHand].filter((each) => each !== eventId)) });
    }
  }

  /** The work is done and cannot be undone: it goes as such, and waits for review there. */
  async sendAsAlreadyDone(eventId: string): Promise<void> {
    const fact = this.#state.facts.find((each) => each.eventId === eventId);
    if (!fact) return;
    await this.keep(asAlreadyDone(fact));
    await this.flush();
  }

  /** Gives the signature that a fact waits for. The secret is sent, and not kept on the device. */
  async sign(eventId: string, secret: string): Promise<Said> {
    const fact = this.#state.facts.find((each) => each.eventId === eventId);
    if (!fact || fact.meaning === null) return { kind: 'waiting' };
    const signed = { ...fact, command: { ...fact.command, signature: { secret, meaning: fact.meaning } } };
    this.#change({ sending: true });
    const sent = await sendFact(signed);
    this.#change({ sending: false });
    if (sent.kind === 'recorded') {
      await this.#settle(fact, sent);
      await this.flush();
      return { kind: 'recorded', answer: sent.answer };
    }
    return sent.kind === 'refused' ? { kind: 'refused', problem: keptProblem(sent.problem) } : { kind: 'waiting' };
  }

  /** Takes a fact back that the record has not taken, with what was said on top of it. */
  async withdraw(eventId: string): Promise<void> {
    const gone = withWhatFollows(this.#state.facts, eventId);
    for (const fact of gone) await dropFact(fact.eventId).catch(() => undefined);
    this.#change({ facts: this.#state.facts.filter((each) => !gone.includes(each)) });
  }

  /** Sends what can be sent, lane by lane, until nothing is left or nothing is heard. */
  async flush(): Promise<void> {
    if (this.#flushing) {
      this.#again = true;
      return this.#flushing;
    }
    this.#flushing = this.#alone(() => this.#sendAll());
    try {
      await this.#flushing;
    } finally {
      this.#flushing = null;
    }
    this.#retryLater();
  }

  /** The network says that it is back. */
  retryNow(): void {
    this.#silentTries = 0;
    void this.flush();
  }

  // Two tabs of one person must not send at the same time: the order within a lane would be lost.
  #alone(work: () => Promise<void>): Promise<void> {
    if (!navigator.locks || this.#accountId === null) return work();
    return navigator.locks.request(`seatwell.outbox.${this.#accountId}`, work) as Promise<void>;
  }

  async #sendAll(): Promise<void> {
    await this.#reload();
    do {
      this.#again = false;
      for (let next = sendable(this.#state.facts)[0]; next; next = sendable(this.#state.facts)[0]) {
        if (navigator.onLine === false) {
          this.#change({ silent: true });
          return;
        }
        this.#change({ sending: true });
        const sent = await sendFact(next);
        this.#change({ sending: false, silent: sent.kind === 'silent' });
        if (sent.kind === 'silent') return;
        await this.#settle(next, sent);
      }
    } while (this.#again);
    this.#change({ silent: false });
  }

  async #settle(fact: QueuedFact, sent: Exclude<Sent, { kind: 'silent' }>): Promise<void> {
    if (sent.kind === 'refused') {
      const problem = keptProblem(sent.problem);
      this.#outcomes.set(fact.eventId, { kind: 'refused', problem });
      await this.keep({ ...fact, state: 'refused', problem });
      return;
    }
    await dropFact(fact.eventId).catch(() => undefined);
    await this.onRecorded(fact, sent.answer).catch(() => undefined);
    this.#outcomes.set(fact.eventId, { kind: 'recorded', answer: sent.answer });
    this.#change({ facts: this.#state.facts.filter((each) => each.eventId !== fact.eventId) });
  }

  /** What another tab has said or sent meanwhile counts as well. */
  async #reload(): Promise<void> {
    try {
      const own = (await keptFacts()).filter((fact) => fact.accountId === this.#accountId);
      this.#change({ facts: inOrder(own), kept: true });
    } catch {
      this.#change({ kept: false });
    }
  }

  #retryLater(): void {
    clearTimeout(this.#timer);
    if (sendable(this.#state.facts).length === 0) {
      this.#silentTries = 0;
      return;
    }
    const wait_ms = again_ms[Math.min(this.#silentTries, again_ms.length - 1)];
    this.#silentTries += 1;
    this.#timer = setTimeout(() => void this.flush(), wait_ms);
  }

  #change(more: Partial<OutboxState>): void {
    this.#state = { ...this.#state, ...more };
    for (const listener of this.#listeners) listener();
  }
}

const keptProblem = ({ code, status, title, detail, items }: ApiProblem): KeptProblem => ({
  code,
  status,
  title,
  detail,
  items,
});

/** The outbox of this tab. */
export const outbox = new Outbox();
