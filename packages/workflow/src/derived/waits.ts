import type { EventType, Role, ShutdownSettings, Stage } from '@seatwell/contract';
import { outOfOrder } from '../fold/order.ts';
import { WORK } from '../fold/work.ts';
import { passCountOf } from '../pass-count.ts';
import { passesStage, stageBefore } from '../stages.ts';
import type { JointState, MakeState } from '../state.ts';
import { hoursBetween, moment } from '../time.ts';
import { relaxationDue } from './flags.ts';
import { levelDueNow, overtakenBy } from './makes.ts';

export type WaitCode =
  | 'nothing'
  | 'hold'
  | 'review'
  | 'procedure'
  | 'target'
  | 'release'
  | 'opening'
  | 'faces'
  | 'faces-again'
  | 'nip-up'
  | 'pass'
  | 'final-round'
  | 'repair'
  | 'relaxation-pass'
  | 'check'
  | 'witness'
  | 'proof'
  | 'hand-over'
  | 'taking-over';

/** What a make waits for, by code and data: screens and lists have the words. */
export interface WaitsFor {
  readonly code: WaitCode;
  /** who moves it on */
  readonly by: Role | null;
  readonly data: Readonly<Record<string, string | number | boolean | null>>;
}

const waits = (code: WaitCode, by: Role | null, data: WaitsFor['data'] = {}): WaitsFor => ({ code, by, data });

function afterTight(joint: JointState, make: MakeState, settings: ShutdownSettings, now: string): WaitsFor {
  const due = relaxationDue(joint, make, settings);
  if (due && moment(now) >= moment(due.from))
    return waits('relaxation-pass', 'technician', { from: due.from, overdueFrom: due.overdueFrom });
  const demand = settings.criticalities[joint.criticality];
  if (demand.witnessPoint && !make.witnessed.includes('tightening'))
    return waits('witness', 'witness', { point: 'tightening' });
  const level = levelDueNow(joint, make, settings, false);
  const by = level === 'self' ? 'technician' : level === 'chargehand' ? 'chargehand' : 'inspector';
  return waits('check', by, { level });
}

function byStage(joint: JointState, make: MakeState, settings: ShutdownSettings, now: string): WaitsFor {
  const start = stageBefore(make.workScope, 'faces-accepted');
  switch (make.stage) {
    case 'planned':
      if (!passesStage(make.workScope, 'engineered')) return waits('proof', 'inspector', { way: make.proof });
      return make.procedure ? waits('target', 'engineer') : waits('procedure', 'engineer');
    case 'engineered':
      return start === 'engineered' ? waits('faces', 'technician') : waits('release', 'operations');
    case 'released':
      return passesStage(make.workScope, 'open')
        ? waits('opening', 'technician')
        : waits('pass', 'technician', { pass: make.nextPass });
    case 'open':
      return waits('faces', 'technician');
    case 'faces-accepted': {
      const lapsed =
        make.facesAcceptedAt !== null && hoursBetween(make.facesAcceptedAt, now) > settings.faceAcceptanceLapses_h;
      return lapsed ? waits('faces-again', 'technician') : waits('nip-up', 'technician');
    }
    case 'nipped-up':
    case 'part-tight': {
      if (!make.target) return waits('target', 'engineer');
      const count = passCountOf(make);
      return make.nextPass > count
        ? waits('final-round', 'technician')
        : waits('pass', 'technician', { pass: make.nextPass, of: count });
    }
    case 'tight':
      return afterTight(joint, make, settings, now);
    case 'checked': {
      const due = relaxationDue(joint, make, settings);
      if (due) return waits('relaxation-pass', 'technician', { from: due.from, overdueFrom: due.overdueFrom });
      return passesStage(make.workScope, 'proven')
        ? waits('proof', 'inspector', { way: make.proof })
        : handOverOf(make);
    }
    case 'proven':
      return handOverOf(make);
    case 'handed-over':
      return waits('nothing', null);
  }
}

/** The coordinator offers, then operations takes over. */
const handOverOf = (make: MakeState): WaitsFor =>
  make.offered ? waits('taking-over', 'operations') : waits('hand-over', 'coordinator');

/**
 * What a make waits for at an instant, the most urgent first: a fact in review, a hold, a leak or a rejected
 * check, and then what its stage needs next.
 */
export function waitsFor(joint: JointState, make: MakeState, settings: ShutdownSettings, workTime: string): WaitsFor {
  if (joint.voided || make.cancelled || overtakenBy(joint, make)) return waits('nothing', null);
  const [review] = make.waiting;
  if (review) return waits('review', 'inspector', { eventId: review.eventId, event: review.type });
  const [hold] = joint.holds;
  if (hold) return waits('hold', hold.releasedBy, { holdId: hold.holdId, reason: hold.reason });
  if (make.leaking || make.rejected)
    return waits('repair', make.underPressure ? 'operations' : 'technician', { leaking: make.leaking });
  return byStage(joint, make, settings, workTime);
}

const CANDIDATES: readonly { type: EventType; payload: (make: MakeState) => unknown }[] = (
  Object.keys(WORK) as EventType[]
).map((type) => ({
  type,
  payload: (make) =>
    type === 'pass-recorded'
      ? { pass: make.stage === 'tight' ? 1 : make.nextPass }
      : type === 'checked'
        ? { level: 'every' }
        : { point: 'tightening' },
}));

/** The event types that have their place in the life of the make as it stands; the rules may still stop one. */
export function nextStep(make: MakeState): readonly EventType[] {
  if (make.cancelled) return [];
  return CANDIDATES.filter(({ type, payload }) => outOfOrder(make, type, payload(make)) === null).map(
    ({ type }) => type,
  );
}

export interface RestartFrom {
  /** passCount + 1 = the final round */
  readonly pass: number;
  readonly finalRound: boolean;
  /** the pass was begun and left: it is repeated from its first bolt */
  readonly repeats: boolean;
  readonly leftAt: string | null;
  readonly leftBy: readonly string[];
}

const LOADED: readonly Stage[] = ['nipped-up', 'part-tight'];

/** Where tightening begins or goes on; null when it is not a make to be tightened now. */
export function restartFrom(make: MakeState): RestartFrom | null {
  const wrong = make.stage === 'tight' && (make.rejected || make.leaking);
  const direct = make.stage === 'released' && !passesStage(make.workScope, 'nipped-up');
  if (!make.procedure || !(LOADED.includes(make.stage) || wrong || direct)) return null;
  const pass = wrong ? 1 : make.nextPass;
  const interrupted = make.passes.at(-1);
  return {
    pass,
    finalRound: pass > passCountOf(make),
    repeats: interrupted !== undefined && !interrupted.finished && interrupted.pass === pass,
    leftAt: make.partTight?.leftAt ?? null,
    leftBy: make.partTight?.leftBy ?? [],
  };
}
