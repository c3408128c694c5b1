import type { Payload, ShutdownEventType, Stage } from '@seatwell/contract';
import { passCountOf } from '../pass-count.ts';
import { passesStage, stageBefore } from '../stages.ts';
import type { MakeState, PartTight, PassRecord, RecordedEvent } from '../state.ts';
import { NOTHING_FITTED } from './new-make.ts';

type Apply<T extends ShutdownEventType> = (make: MakeState, payload: Payload<T>, event: RecordedEvent) => MakeState;

const union = <T>(a: readonly T[], b: readonly T[]): readonly T[] => [...new Set([...a, ...b])];

/** An offer to operations stands only while the make stays where it was offered. */
const to = (make: MakeState, stage: Stage, event: RecordedEvent): MakeState =>
  make.stage === stage
    ? make
    : { ...make, stage, stageSince: event.workTime, ...(make.offered ? { offered: null } : {}) };

const unchecked = { checkedBy: null, checkedAt: null, provenAt: null, handedOverAt: null } as const;

const settled = { rejected: false, leaking: false, retighten: false } as const;

/** Who worked with which tools: what the four-eyes rules and the tool reports go by. */
function worked(make: MakeState, event: RecordedEvent): MakeState {
  const { calibrations = [], flags = [], sampleDrawn, lotKey } = event.evidence;
  return {
    ...make,
    workedBy: union(make.workedBy, event.performedBy),
    workRecordedBy: event.recordedByPersonId
      ? union(make.workRecordedBy, [event.recordedByPersonId])
      : make.workRecordedBy,
    provisionalTools: union(
      make.provisionalTools,
      calibrations.filter((c) => c.provisional).map((c) => c.toolId),
    ),
    implausible: union(make.implausible, flags),
    sampleDrawn: sampleDrawn ?? make.sampleDrawn,
    lotKey: lotKey ?? make.lotKey,
  };
}

const toolIds = (tools: Payload<'pass-recorded'>['tools']): string[] =>
  [tools.toolId, tools.pumpId, tools.gaugeId].filter((id) => id !== null);

const becomeTight = (make: MakeState, event: RecordedEvent): MakeState => ({
  ...to(make, 'tight', event),
  ...settled,
  ...unchecked,
  nextPass: passCountOf(make) + 1,
  partTight: null,
  tightAt: event.workTime,
  relaxationDone: false,
});

const becomePartTight = (
  make: MakeState,
  event: RecordedEvent,
  left: Pick<PartTight, 'pass' | 'lastBolt' | 'boltsDone' | 'why'>,
  restartPass: number,
): MakeState => ({
  ...to(make, 'part-tight', event),
  ...settled,
  ...unchecked,
  tightAt: null,
  nextPass: restartPass,
  partTight: { ...left, leftAt: event.workTime, leftBy: event.performedBy, restartPass },
});

function recordPass(make: MakeState, payload: Payload<'pass-recorded'>, event: RecordedEvent): MakeState {
  const finished = payload.outcome === 'finished';
  const record: PassRecord = {
    eventId: event.eventId,
    pass: payload.pass,
    finished,
    lastBolt: payload.lastBolt,
    boltsDone: payload.boltsDone,
    set: payload.set,
    toolId: payload.tools.toolId,
    performedBy: event.performedBy,
    startedAt: payload.startedAt,
    endedAt: payload.endedAt,
    why: payload.why,
  };
  const next: MakeState = {
    ...worked(make, event),
    passes: [...make.passes, record],
    toolsUsed: union(make.toolsUsed, toolIds(payload.tools)),
  };
  const last = finished && payload.pass === passCountOf(make);
  if (last && !make.procedure?.finalRound) return becomeTight(next, event);
  return becomePartTight(next, event, payload, finished ? payload.pass + 1 : payload.pass);
}

function reopen(make: MakeState, event: RecordedEvent): MakeState {
  return {
    ...to(make, 'open', event),
    ...settled,
    ...unchecked,
    openedAt: event.workTime,
    openedBy: event.performedBy,
    ...NOTHING_FITTED,
    witnessed: [],
  };
}

function loosen(make: MakeState, payload: Payload<'loosened'>, event: RecordedEvent): MakeState {
  const why = payload.reason;
  const some = { pass: make.nextPass, lastBolt: null, boltsDone: 0, why };
  const part = { ...becomePartTight(make, event, some, 1), witnessed: [] };
  if (payload.extent === 'some') return make.stage === 'nipped-up' ? make : part;
  if (!passesStage(make.workScope, 'nipped-up')) return { ...part, retighten: true };
  return { ...to(part, 'nipped-up', event), partTight: null, retighten: true };
}

/** What each event does to a make that it fits (fold/order.ts); the table is the whole life of a make. */
export const WORK: { readonly [T in ShutdownEventType]?: Apply<T> } = {
  'procedure-assigned': (make, payload, event) => {
    const procedure = event.evidence.procedure ?? null;
    const same = make.procedure?.procedureId === payload.procedureId && make.procedure.revision === payload.revision;
    const target = same ? make.target : null;
    const next = { ...make, procedure, target };
    return make.stage === 'engineered' && !target ? to(next, 'planned', event) : next;
  },
  'target-approved': (make, _payload, event) => {
    const target = event.evidence.target ?? null;
    const next = { ...make, target };
    return make.stage === 'planned' && target ? to(next, 'engineered', event) : next;
  },
  'break-released': (make, payload, event) => {
    const next = { ...make, permitId: payload.permitId, underPressure: false };
    return make.stage === 'engineered' ? to(next, 'released', event) : next;
  },
  opened: (make, _payload, event) => reopen(make, event),
  'faces-inspected': (make, payload, event) =>
    payload.accepted
      ? {
          ...to(make, 'faces-accepted', event),
          facesAcceptedAt: event.workTime,
          boltingCondition: payload.bolting.condition,
        }
      : {
          ...to(make, stageBefore(make.workScope, 'faces-accepted') ?? make.stage, event),
          facesAcceptedAt: null,
        },
  'nipped-up': (make, payload, event) => ({
    ...to(worked(make, event), 'nipped-up', event),
    fitted: {
      gasketFamily: payload.gasket.family,
      gasketPurpose: payload.gasket.purpose,
      gasketCount: payload.gasket.count,
      batch: payload.gasket.batch,
      photo: payload.gasket.markingPhoto,
      boltGrade: payload.bolting.grade,
      temporaryBolts: payload.bolting.temporary,
      lubricant: payload.lubricant,
    },
  }),
  'pass-recorded': recordPass,
  'final-round-recorded': (make, payload, event) => {
    const next = { ...worked(make, event), toolsUsed: union(make.toolsUsed, toolIds(payload.tools)) };
    // A nut that still moved: another round is due, and the joint is not tight.
    return payload.nutMoved ? next : becomeTight(next, event);
  },
  'relaxation-pass-recorded': (make, payload, event) => ({
    ...worked(make, event),
    relaxationDone: true,
    toolsUsed: union(make.toolsUsed, toolIds(payload.tools)),
  }),
  'stud-replaced': (make, payload, event) => {
    const next = { ...worked(make, event), studsReplaced: union(make.studsReplaced, payload.bolts) };
    if (make.stage === 'nipped-up') return next;
    const last = passCountOf(make) || 1;
    const restart = make.stage === 'part-tight' ? Math.min(make.nextPass, last) : last;
    const left = { pass: restart, lastBolt: null, boltsDone: 0, why: payload.reason };
    return { ...becomePartTight(next, event, left, restart), witnessed: [] };
  },
  loosened: loosen,
  'leak-found': (make, payload, event) => {
    const leaking = {
      ...make,
      leaking: true,
      hasLeaked: true,
      underPressure: make.underPressure || payload.underPressure,
      witnessed: [],
    };
    const closedStages: readonly Stage[] = ['checked', 'proven', 'handed-over'];
    if (!closedStages.includes(make.stage)) return leaking;
    const back = passesStage(make.workScope, 'tight') ? 'tight' : 'planned';
    return { ...to(leaking, back, event), ...unchecked };
  },
  checked: (make, payload, event) =>
    payload.outcome === 'accepted'
      ? {
          ...to(make, 'checked', event),
          checkedBy: event.recordedByPersonId,
          checkedAt: event.workTime,
        }
      : { ...to(make, 'tight', event), ...unchecked, rejected: true, witnessed: [] },
  witnessed: (make, { point }) => ({ ...make, witnessed: union(make.witnessed, [point]) }),
  'witness-waived': (make, { point }) => ({ ...make, witnessed: union(make.witnessed, [point]) }),
  'deviation-accepted': (make, payload, event) => ({
    ...make,
    deviations: [
      ...make.deviations,
      { rule: payload.rule, reason: payload.reason, until: payload.until, eventId: event.eventId },
    ],
  }),
  proven: (make, _payload, event) => ({
    ...to(make, 'proven', event),
    provenAt: event.workTime,
    // From its test on a joint may be full and live.
    underPressure: true,
  }),
  'hand-over-offered': (make, { systemId, exceptions }, event) => ({
    ...make,
    offered: { systemId, exceptions, by: event.recordedByPersonId, at: event.workTime },
  }),
  'handed-over': (make, _payload, event) => ({
    ...to(make, 'handed-over', event),
    handedOverAt: event.workTime,
  }),
  'taken-back': (make, _payload, event) => ({
    ...to(make, stageBefore(make.workScope, 'handed-over') ?? make.stage, event),
    handedOverAt: null,
  }),
};
