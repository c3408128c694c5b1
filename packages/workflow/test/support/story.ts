import type { EventType, Payload, Role } from '@seatwell/contract';
import {
  type Decision,
  decide,
  type Evidence,
  eventKind,
  foldHistory,
  foldJoint,
  type JointState,
  type MakeState,
  needsFullFold,
  type RecordedEvent,
  type RuleContext,
} from '@seatwell/workflow';
import * as id from './ids.ts';
import { PAYLOADS } from './payloads.ts';
import { listing, plan, procedureEvidence, targetEvidence } from './register.ts';
import { type Surroundings, surroundings, timesAt } from './world.ts';

const HOUR_MS = 3_600_000;

/** What a wrench was set to. */
export const torque = (torque_Nm: number) => ({ torque_Nm, asEntered: { value: torque_Nm, unit: 'N·m' } });

interface Actor {
  readonly personId: string;
  readonly roles: readonly Role[];
  readonly signs: boolean;
}

const crew: Actor = { personId: id.ANA, roles: ['technician'], signs: false };
const chargehand: Actor = { personId: id.CARL, roles: ['chargehand'], signs: true };
const inspector: Actor = { personId: id.INES, roles: ['inspector'], signs: true };
const engineer: Actor = { personId: id.EDA, roles: ['engineer'], signs: true };
const operations: Actor = { personId: id.OMAR, roles: ['operations'], signs: true };
const witness: Actor = { personId: id.WIM, roles: ['witness'], signs: true };
const coordinator: Actor = { personId: id.CORA, roles: ['coordinator'], signs: true };

const ACTORS: { readonly [T in EventType]?: Actor } = {
  'procedure-assigned': engineer,
  'target-approved': engineer,
  'deviation-accepted': engineer,
  'hold-placed': engineer,
  'hold-released': engineer,
  'break-released': operations,
  witnessed: witness,
  'witness-waived': witness,
  proven: inspector,
  revoked: { ...inspector, roles: ['inspector', 'engineer', 'operations', 'coordinator', 'witness'] },
  'review-settled': inspector,
  'hand-over-offered': coordinator,
  'handed-over': operations,
  'taken-back': coordinator,
  'joint-voided': coordinator,
};

/** Who normally records an event; a check by its level. */
export function actorOf(type: EventType, payload: unknown): Actor {
  if (type !== 'checked') return ACTORS[type] ?? crew;
  const { level } = payload as Payload<'checked'>;
  if (level === 'self') return { ...crew, signs: true };
  return level === 'chargehand' ? chargehand : inspector;
}

export interface Choices {
  readonly makeId?: string;
  readonly at?: string;
  readonly alreadyDone?: boolean;
  readonly evidence?: Evidence;
  readonly around?: Partial<RuleContext>;
}

/** The joint of the register that a found joint turns out to be. */
export const neighbourListing: Payload<'joint-listed'> = {
  ...listing,
  placeId: id.uuid(98),
  tag: 'J-1099',
  makes: [{ ...plan, makeId: id.uuid(97) }],
};

function neighbour(): NonNullable<RuleContext['mergeInto']> {
  const joint = { ...new Story(neighbourListing).state, jointId: id.uuid(99) };
  return { joint, make: joint.makes[0] ?? null };
}

/** The story of one joint as its people record it, through the same decision and fold as the server's. */
export class Story {
  readonly events: RecordedEvent[] = [];
  state: JointState;
  readonly around: Surroundings;
  private clock: number;

  constructor(joint: Payload<'joint-listed'> | Payload<'joint-found'> = listing) {
    this.around = surroundings;
    this.clock = Date.parse('2027-03-02T07:00:00.000Z');
    const type = 'temporaryNumber' in joint ? 'joint-found' : 'joint-listed';
    this.state = foldJoint(null, this.keep(type, joint, null, [], {}));
  }

  get now(): string {
    return new Date(this.clock).toISOString();
  }

  wait(hours: number): this {
    this.clock += hours * HOUR_MS;
    return this;
  }

  make(makeId: string = this.state.makes[0]?.makeId ?? ''): MakeState {
    const make = this.state.makes.find((m) => m.makeId === makeId);
    if (!make) throw new Error(`The story has no make ${makeId}.`);
    return make;
  }

  /** What the rules would look at if this were recorded now. */
  context<T extends EventType>(type: T, payload: Payload<T>, choices: Choices = {}): RuleContext {
    const actor = actorOf(type, payload);
    const named = (payload as { eventId?: string }).eventId;
    const event = named === undefined ? undefined : this.events.find((e) => e.eventId === named);
    const revoked = this.events.some(
      (e) => e.type === 'revoked' && (e.payload as Payload<'revoked'>).eventId === named,
    );
    return {
      ...this.around,
      ...timesAt(choices.at ?? this.now),
      joint: this.state,
      make: this.make(choices.makeId),
      performedBy: [id.ANA, id.BEN],
      signerPersonId: actor.signs ? actor.personId : null,
      signed: actor.signs,
      actorRoles: actor.roles,
      newTarget: type === 'target-approved' ? targetEvidence : null,
      ...(type === 'joint-merged' ? { mergeInto: neighbour() } : {}),
      named: event
        ? {
            eventId: event.eventId,
            type: event.type,
            payload: event.payload,
            makeId: event.makeId,
            performedBy: event.performedBy,
            revoked,
            inReview: this.state.makes.some((m) => m.waiting.some((w) => w.eventId === event.eventId)),
          }
        : null,
      ...choices.around,
    };
  }

  /** Proposes an event: decided by the rules, and folded where it is kept. */
  propose<T extends EventType>(type: T, payload: Payload<T>, choices: Choices = {}): Decision {
    const context = this.context(type, payload, choices);
    const decision = decide({ type, payload }, context, {
      kind: eventKind(type, payload),
      alreadyDone: choices.alreadyDone ?? false,
    });
    if (decision.outcome === 'refuse') return decision;
    const codes = decision.outcome === 'needs-review' ? decision.codes : [];
    const flags = decision.outcome === 'accept' ? decision.flags.map((f) => f.code) : [];
    const evidence: Evidence = {
      ...(type === 'procedure-assigned' ? { procedure: procedureEvidence } : {}),
      ...(type === 'target-approved' ? { target: targetEvidence } : {}),
      ...(flags.length > 0 ? { flags } : {}),
      ...choices.evidence,
    };
    const event = this.keep(type, payload, context.make.makeId, codes, { ...choices, evidence });
    this.state = needsFullFold(this.state, event) ? foldHistory(this.events)! : foldJoint(this.state, event);
    this.wait(1);
    return decision;
  }

  /** Records a sound event with some fields changed. @throws Error when the rules do not accept it */
  record<T extends EventType>(type: T, change: Partial<Payload<T>> = {}, choices: Choices = {}): this {
    const decision = this.propose(type, { ...this.sound(type, choices.makeId), ...change }, choices);
    if (decision.outcome !== 'accept')
      throw new Error(`${type}: ${decision.outcome} ${JSON.stringify(decision.failed, null, 1)}`);
    return this;
  }

  /** The sound payload of an event here and now: its times at the story's clock, a pass the next one of the make. */
  sound<T extends EventType>(type: T, makeId?: string): Payload<T> {
    const payload = PAYLOADS[type];
    if (!('startedAt' in payload)) return payload;
    const startedAt = new Date(this.clock - HOUR_MS / 2).toISOString();
    const timed = { ...payload, startedAt, endedAt: this.now };
    if (!('pass' in timed)) return timed;
    const pass = Math.min(this.make(makeId).nextPass, procedureEvidence.passCount);
    return { ...timed, pass, set: torque(targetEvidence.passes[pass - 1]?.torque_Nm ?? 0) };
  }

  pass(pass: number, change: Partial<Payload<'pass-recorded'>> = {}, choices: Choices = {}): this {
    const set = torque(targetEvidence.passes[pass - 1]?.torque_Nm ?? 0);
    return this.record('pass-recorded', { pass, set, ...change }, choices);
  }

  private keep(
    type: EventType,
    payload: unknown,
    makeId: string | null,
    reviewCodes: readonly string[],
    choices: Choices,
  ): RecordedEvent {
    const actor = actorOf(type, payload);
    const sequence = this.events.length + 1;
    const event: RecordedEvent = {
      eventId: id.uuid(1000 + sequence),
      type,
      v: 1,
      sequence,
      jointId: id.JOINT,
      makeId,
      payload,
      evidence: choices.evidence ?? {},
      accountId: id.uuid(90),
      recordedByPersonId: actor.personId,
      performedBy: choices.around?.performedBy ?? (eventKind(type, payload) === 'fact' ? [id.ANA, id.BEN] : []),
      workTime: choices.at ?? this.now,
      recordedAt: this.now,
      signed: actor.signs,
      reviewCodes,
    };
    this.events.push(event);
    return event;
  }
}

const STEPS = {
  listed: () => {},
  'procedure assigned': (s) => s.record('procedure-assigned'),
  engineered: (s) => s.record('target-approved'),
  released: (s) => s.record('break-released'),
  open: (s) => s.record('opened'),
  'faces accepted': (s) => s.record('faces-inspected'),
  'nipped up': (s) => s.record('nipped-up'),
  'first pass': (s) => s.pass(1),
  'every pass': (s) => s.pass(2).pass(3),
  tight: (s) => s.record('final-round-recorded'),
  checked: (s) => s.record('checked'),
  proven: (s) => s.record('proven'),
  offered: (s) => s.record('hand-over-offered'),
  'handed over': (s) => s.record('handed-over'),
} satisfies Record<string, (story: Story) => unknown>;

export type Point = keyof typeof STEPS;

/** The story of a plain joint told up to a point of its life. */
export function toldTo(point: Point, story: Story = new Story()): Story {
  for (const [name, step] of Object.entries(STEPS)) {
    (step as (story: Story) => unknown)(story);
    if (name === point) break;
  }
  return story;
}
