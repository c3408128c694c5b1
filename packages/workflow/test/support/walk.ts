import type { EventType, Payload, WorkScope } from '@seatwell/contract';
import {
  CATALOGUE,
  DEFAULT_SETTINGS,
  decide,
  decidePack,
  eventKind,
  isEventType,
  type JointState,
  levelDueNow,
  type MakeState,
  makeToWorkOn,
  passesStage,
  type RecordedEvent,
  relaxationDue,
} from '@seatwell/workflow';
import * as id from './ids.ts';
import { PAYLOADS } from './payloads.ts';
import { listing, plan, specification } from './register.ts';
import { type Choices, Story, torque } from './story.ts';
import { timesAt, tools } from './world.ts';

/** Numbers from 0 up to 1 that drive one step. */
export interface Step {
  readonly what: number;
  readonly which: number;
  readonly how: number;
}

type Proposal = { [T in EventType]: { type: T; change?: Partial<Payload<T>>; choices?: Choices } }[EventType];

const pick = <T>(from: readonly T[], at: number): T | undefined => from[Math.floor(at * from.length)];

const SCOPES: readonly WorkScope[] = [
  'break-and-remake',
  'break-and-remake',
  'break-and-remake',
  'new',
  'retighten-ambient',
  'hot-bolting',
  'test-only',
];

const uncalibrated = { tools: { ...tools, [id.WRENCH]: { ...tools[id.WRENCH]!, calibrations: [] } } };

/** A joint to begin with: of any criticality, scope and number of makes, or a found one. */
export function begin({ what, which, how }: Step): Story {
  if (what < 0.15) return new Story(PAYLOADS['joint-found']);
  const criticality = pick(['A', 'B', 'C', 'C'] as const, which) ?? 'C';
  const workScope = pick(SCOPES, how) ?? 'new';
  const first = { ...plan, workScope };
  const second = { ...plan, makeId: id.NEXT_MAKE, number: 2 };
  const makes = what > 0.75 ? [{ ...first, purpose: 'spade-in' as const }, second] : [first];
  return new Story({ ...listing, criticality, makes });
}

/** What a crew that does everything right would record next. */
function rightNext(joint: JointState, make: MakeState, story: Story): Proposal {
  const choices = { makeId: make.makeId };
  if (!joint.bolting) return { type: 'joint-specified', change: { specification, criticality: 'C' }, choices };
  if (joint.holds[0]) return { type: 'hold-released', change: { holdId: joint.holds[0].holdId }, choices };
  const waiting = make.waiting[0];
  if (waiting) {
    const outcome = waiting.missing ? 'reject-as-not-done' : 'accept';
    return { type: 'review-settled', change: { eventId: waiting.eventId, outcome }, choices };
  }
  if (make.underPressure && (make.leaking || make.stage === 'part-tight')) return { type: 'break-released', choices };
  const pass = (n: number): Proposal => ({
    type: 'pass-recorded',
    change: { pass: n, set: torque([72, 168, 240][n - 1] ?? 240), gapsChecked_mm: [3, 3, 3, 3] },
    choices,
  });
  switch (make.stage) {
    case 'planned':
      if (make.workScope === 'test-only') return { type: 'proven', choices };
      return { type: make.procedure ? 'target-approved' : 'procedure-assigned', choices };
    case 'engineered':
      return { type: passesStage(make.workScope, 'released') ? 'break-released' : 'faces-inspected', choices };
    case 'released':
      return passesStage(make.workScope, 'open') ? { type: 'opened', choices } : pass(1);
    case 'open':
      return { type: 'faces-inspected', choices };
    case 'faces-accepted': {
      const gasket = { ...PAYLOADS['nipped-up'].gasket, purpose: make.purpose };
      return { type: 'nipped-up', change: { gasket }, choices };
    }
    case 'nipped-up':
    case 'part-tight':
      if (!make.procedure) return { type: 'procedure-assigned', choices };
      if (!make.target) return { type: 'target-approved', choices };
      return make.nextPass > 3 ? { type: 'final-round-recorded', choices } : pass(make.nextPass);
    case 'tight': {
      if (make.rejected || make.leaking) return pass(1);
      if (relaxationDue(joint, make, DEFAULT_SETTINGS)) {
        story.wait(5);
        return { type: 'relaxation-pass-recorded', choices };
      }
      const { witnessPoint } = DEFAULT_SETTINGS.criticalities[joint.criticality];
      if (witnessPoint && !make.witnessed.includes('tightening')) return { type: 'witnessed', choices };
      return { type: 'checked', change: { level: levelDueNow(joint, make, DEFAULT_SETTINGS, false) }, choices };
    }
    case 'checked':
      if (relaxationDue(joint, make, DEFAULT_SETTINGS)) {
        story.wait(5);
        return { type: 'relaxation-pass-recorded', choices };
      }
      if (passesStage(make.workScope, 'proven')) return { type: 'proven', choices };
      return { type: make.offered ? 'handed-over' : 'hand-over-offered', choices };
    case 'proven':
      return { type: make.offered ? 'handed-over' : 'hand-over-offered', choices };
    case 'handed-over':
      return { type: 'taken-back', choices };
  }
}

const counting = (story: Story, kind: 'fact' | 'decision') => (event: RecordedEvent) =>
  isEventType(event.type) &&
  event.makeId !== null &&
  eventKind(event.type, event.payload) === kind &&
  CATALOGUE[event.type].subject !== 'event' &&
  !story.events.some((e) => e.type === 'revoked' && (e.payload as { eventId: string }).eventId === event.eventId);

/** What goes wrong, or is put right, on the way. */
function turnOfEvents(story: Story, make: MakeState, { which, how }: Step): Proposal {
  const choices: Choices = { makeId: make.makeId };
  const fact = pick(story.events.filter(counting(story, 'fact')), how);
  const decision = pick(story.events.filter(counting(story, 'decision')), how);
  const about = (event: RecordedEvent): Choices => ({ makeId: event.makeId ?? make.makeId });
  const turns: Proposal[] = [
    { type: 'hold-placed', choices },
    { type: 'leak-found', change: { underPressure: how < 0.5 }, choices },
    { type: 'loosened', change: { extent: how < 0.5 ? 'some' : 'all' }, choices },
    { type: 'stud-replaced', choices },
    { type: 'opened', choices },
    { type: 'faces-inspected', change: { accepted: false, remark: 'Scored' }, choices },
    {
      type: 'pass-recorded',
      change: { ...story.sound('pass-recorded', make.makeId), outcome: 'interrupted', boltsDone: 3, lastBolt: 3 },
      choices,
    },
    { type: 'checked', change: { level: 'every', outcome: 'rejected', reason: 'Nuts unmarked' }, choices },
    { type: 'checked', change: { level: 'self' }, choices },
    { type: 'relaxation-pass-recorded', choices },
    { type: how < 0.5 ? 'witnessed' : 'witness-waived', choices },
    { type: 'witness-waived', choices },
    { type: 'break-released', choices },
    { type: 'deviation-accepted', choices },
    // Said to be done although a rule stops it, and sometimes told late.
    {
      type: 'pass-recorded',
      change: story.sound('pass-recorded', make.makeId),
      choices: { ...choices, alreadyDone: true, around: uncalibrated },
    },
    { type: 'final-round-recorded', change: { nutMoved: how < 0.5 }, choices: { ...choices, alreadyDone: true } },
    {
      type: 'opened',
      choices: { ...choices, alreadyDone: true, at: new Date(Date.parse(story.now) - 5 * 3_600_000).toISOString() },
    },
    {
      type: 'loosened',
      choices: { ...choices, alreadyDone: true, at: new Date(Date.parse(story.now) - 3 * 3_600_000).toISOString() },
    },
    { type: 'nipped-up', choices: { ...choices, alreadyDone: true } },
  ];
  if (fact) {
    const payload = { ...(fact.payload as object), ...(how < 0.3 ? { accepted: false } : { remark: 'Corrected' }) };
    turns.push({ type: 'corrected', change: { eventId: fact.eventId, payload }, choices: about(fact) });
  }
  if (decision) turns.push({ type: 'revoked', change: { eventId: decision.eventId }, choices: about(decision) });
  const waiting = pick(make.waiting, how);
  if (waiting) {
    const outcome = how < 0.5 ? 'reject-as-not-done' : 'accept';
    turns.push({ type: 'review-settled', change: { eventId: waiting.eventId, outcome }, choices });
  }
  return pick(turns, which) ?? { type: 'hold-placed', choices };
}

const TYPES = (Object.keys(CATALOGUE) as EventType[]).filter(
  // A joint begins once; revocations, corrections and settlements name an event: turnOfEvents proposes them.
  (type) => !['joint-listed', 'joint-found'].includes(type) && CATALOGUE[type].subject !== 'event',
);
const ENDS = ['joint-voided', 'joint-merged', 'make-cancelled'];

const OF_THE_JOINT = ['joint', 'make', 'event'];

/** One step of a walk: proposes an event, mostly a right one; answers its type when it was accepted. */
export function take(story: Story, step: Step): EventType | null {
  const make = makeToWorkOn(story.state) ?? story.make();
  const { what, which, how } = step;
  const anything = (): Proposal => {
    // Before anything was done on it a make may still be ended; afterwards a rule stops that.
    const untouched = make.openedAt === null && make.fitted === null && make.passes.length === 0;
    if (story.state.found && !story.state.voided && what > 0.97) return { type: 'joint-merged' };
    if (untouched && what > 0.985) return { type: pick(ENDS, which) } as Proposal;
    const type = pick(TYPES, which) ?? 'hold-placed';
    // What ends the life of a joint comes rarely, or nothing else would come.
    return (ENDS.includes(type) && how > 0.75 ? { type: 'hold-placed' } : { type }) as Proposal;
  };
  const proposal =
    what < 0.72 ? rightNext(story.state, make, story) : what < 0.85 ? turnOfEvents(story, make, step) : anything();
  const {
    type,
    change,
    choices = { makeId: make.makeId },
  } = proposal as {
    type: EventType;
    change?: object;
    choices?: Choices;
  };
  const payload = { ...(story.sound(type, choices.makeId) as object), ...change } as Payload<EventType>;
  if (OF_THE_JOINT.includes(CATALOGUE[type].subject))
    return story.propose(type, payload, choices).outcome === 'accept' ? type : null;
  const handling = { kind: eventKind(type, payload), alreadyDone: false };
  const decision =
    type === 'pack-released'
      ? decidePack({ type, payload }, { ...story.around, ...timesAt(story.now) }, handling)
      : decide({ type, payload }, story.context(type, payload, choices), handling);
  return decision.outcome === 'accept' ? type : null;
}
