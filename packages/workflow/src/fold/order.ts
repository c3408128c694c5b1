import type { EventType, Payload, Stage } from '@seatwell/contract';
import { passCountOf } from '../pass-count.ts';
import { passesStage, stageBefore } from '../stages.ts';
import type { MakeState } from '../state.ts';

export interface OutOfOrder {
  readonly code: string;
  readonly detail: string;
}

type Fits<T extends EventType> = (make: MakeState, payload: Payload<T>) => OutOfOrder | null;

const says = (code: string, make: MakeState, needs: string): OutOfOrder => ({
  code,
  detail: `The make is ${make.stage.replaceAll('-', ' ')}; ${needs}.`,
});

const at = (make: MakeState, ...stages: readonly Stage[]): boolean => stages.includes(make.stage);

/** Tight, but not as it must be: loaded, and to be retightened, loosened or reopened. */
const tightButWrong = (make: MakeState): boolean => at(make, 'tight') && (make.rejected || make.leaking);

const closed = ['part-tight', 'tight', 'checked', 'proven'] as const;

function passFits(make: MakeState, payload: Payload<'pass-recorded'>): OutOfOrder | null {
  const start = passesStage(make.workScope, 'nipped-up') ? 'nipped-up' : 'released';
  if (!at(make, start, 'part-tight') && !tightButWrong(make))
    return says('passes.nipped-up-first', make, `a pass needs it ${start.replaceAll('-', ' ')} or part tight`);
  if (!make.procedure) return says('passes.in-order', make, 'it has no procedure to pass by');
  const allowed = tightButWrong(make) ? [1, passCountOf(make)] : [make.nextPass];
  if (allowed.includes(payload.pass) && payload.pass <= passCountOf(make)) return null;
  const next = allowed[0]! > passCountOf(make) ? 'the final round' : `pass ${[...new Set(allowed)].join(' or ')}`;
  return says('passes.in-order', make, `pass ${payload.pass} was recorded and ${next} is next`);
}

const ORDER: { readonly [T in EventType]?: Fits<T> } = {
  'procedure-assigned': (make) =>
    // One that was revoked is replaced wherever the make is.
    make.procedure && at(make, ...closed, 'handed-over') && !tightButWrong(make)
      ? says('engineered.before-tightening', make, 'a procedure is assigned before the first pass')
      : null,
  'target-approved': (make) => {
    if (!passesStage(make.workScope, 'engineered'))
      return says('engineered.before-tightening', make, `${make.workScope} needs no target`);
    if (at(make, 'checked', 'proven', 'handed-over'))
      return says('engineered.before-tightening', make, 'a target is approved before the check');
    return make.procedure ? null : says('engineered.procedure-first', make, 'a target needs a procedure');
  },
  'break-released': (make) => {
    // Whatever its scope and stage: what may be under pressure is released before its bolts are touched.
    if (make.underPressure) return null;
    if (!passesStage(make.workScope, 'released'))
      return says('released.engineered-first', make, `${make.workScope} needs no release`);
    return at(make, 'engineered', 'released') || tightButWrong(make)
      ? null
      : says('released.engineered-first', make, 'it is released once it is engineered');
  },
  opened: (make) => {
    if (!passesStage(make.workScope, 'open'))
      return says('open.released-first', make, `the work scope ${make.workScope} does not open it`);
    return at(make, 'released', 'nipped-up', 'part-tight') || tightButWrong(make)
      ? null
      : says('open.released-first', make, 'it is opened once it is released');
  },
  'faces-inspected': (make) => {
    const start = stageBefore(make.workScope, 'faces-accepted');
    return start && at(make, start, 'faces-accepted')
      ? null
      : says('faces.open-first', make, 'faces are inspected while it is open');
  },
  'nipped-up': (make) =>
    at(make, 'faces-accepted') || (at(make, 'nipped-up') && !make.retighten)
      ? null
      : says('nipped-up.faces-first', make, 'it is nipped up once its faces are accepted'),
  'pass-recorded': passFits,
  'final-round-recorded': (make) => {
    if (tightButWrong(make)) return null;
    return at(make, 'part-tight') && make.procedure && make.nextPass > passCountOf(make)
      ? null
      : says(
          'tight.passes-first',
          make,
          `the final round follows pass ${passCountOf(make)}, and pass ${make.nextPass} is next`,
        );
  },
  'relaxation-pass-recorded': (make) =>
    at(make, 'tight', 'checked', 'proven') && !tightButWrong(make)
      ? null
      : says('tight.before-relaxation', make, 'a relaxation pass follows the final round'),
  'stud-replaced': (make) =>
    at(make, 'nipped-up', ...closed) ? null : says('stud.bolts-in', make, 'its bolts are not in'),
  loosened: (make) =>
    at(make, 'nipped-up', ...closed) ? null : says('loosened.bolts-in', make, 'its bolts are not in'),
  checked: (make) =>
    at(make, 'tight', 'checked') && !tightButWrong(make)
      ? null
      : says('checked.tight-first', make, 'it is checked once it is tight and neither rejected nor leaking'),
  witnessed: (make, { point }) => pointFits(make, point),
  'witness-waived': (make, { point }) => pointFits(make, point),
  proven: (make) => {
    const before = stageBefore(make.workScope, 'proven');
    return before && at(make, before) && !make.leaking
      ? null
      : says(
          'proven.checked-first',
          make,
          before ? `it is proven once it is ${before} and does not leak` : 'its work scope has no proof',
        );
  },
  'hand-over-offered': handOverFits,
  // That it was offered first is a rule and not an order: records from before there was an offer fold as they did.
  'handed-over': handOverFits,
  'taken-back': (make) =>
    at(make, 'handed-over') ? null : says('taken-back.handed-over-first', make, 'only what was handed over comes back'),
};

function handOverFits(make: MakeState): OutOfOrder | null {
  const before = stageBefore(make.workScope, 'handed-over');
  return before && at(make, before) && !make.leaking
    ? null
    : says('handed-over.proven-first', make, `it is handed over once it is ${before} and does not leak`);
}

function pointFits(make: MakeState, point: 'tightening' | 'test'): OutOfOrder | null {
  const stages: readonly Stage[] =
    point === 'tightening'
      ? ['part-tight', 'tight', 'checked']
      : ['checked', 'proven', ...(make.workScope === 'test-only' ? (['planned'] as const) : [])];
  return stages.includes(make.stage) ? null : says('witnessed.at-its-stage', make, `the ${point} is not at hand`);
}

/** Codes that `outOfOrder` can answer; each is a rule of the table. */
export const ORDER_CODES = [
  'engineered.before-tightening',
  'engineered.procedure-first',
  'released.engineered-first',
  'open.released-first',
  'faces.open-first',
  'nipped-up.faces-first',
  'passes.nipped-up-first',
  'passes.in-order',
  'tight.passes-first',
  'tight.before-relaxation',
  'stud.bolts-in',
  'loosened.bolts-in',
  'checked.tight-first',
  'witnessed.at-its-stage',
  'proven.checked-first',
  'handed-over.proven-first',
  'taken-back.handed-over-first',
] as const;

/**
 * Whether an event has its place in the life of the make as it stands: null when it has, else the code of the
 * order rule and what is missing. The fold and the rules ask the same question, so that no stage is ever
 * reached without those that its work scope demands, whatever was accepted and in whatever order it arrived.
 */
export function outOfOrder(make: MakeState, type: string, payload: unknown): OutOfOrder | null {
  const fits = ORDER[type as EventType] as ((make: MakeState, payload: unknown) => OutOfOrder | null) | undefined;
  return fits ? fits(make, payload) : null;
}
