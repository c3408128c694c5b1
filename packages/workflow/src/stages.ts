import type { Stage, WorkScope } from '@seatwell/contract';

const RETIGHTENED = [
  'planned',
  'engineered',
  'released',
  'part-tight',
  'tight',
  'checked',
  'proven',
  'handed-over',
] as const;

// In service there is no test after the work: the check closes it.
const IN_SERVICE = ['planned', 'engineered', 'released', 'part-tight', 'tight', 'checked', 'handed-over'] as const;

const STAGES_OF_SCOPE = {
  'break-and-remake': [
    'planned',
    'engineered',
    'released',
    'open',
    'faces-accepted',
    'nipped-up',
    'part-tight',
    'tight',
    'checked',
    'proven',
    'handed-over',
  ],
  // Nothing is broken: a new joint has no release and no opening.
  new: [
    'planned',
    'engineered',
    'faces-accepted',
    'nipped-up',
    'part-tight',
    'tight',
    'checked',
    'proven',
    'handed-over',
  ],
  'retighten-ambient': RETIGHTENED,
  'test-only': ['planned', 'proven', 'handed-over'],
  'start-up-retorque': IN_SERVICE,
  'live-tightening': IN_SERVICE,
  'hot-bolting': IN_SERVICE,
} as const satisfies Record<WorkScope, readonly Stage[]>;

/** Work on a joint in service: an operation of its own, only under a procedure made for it. */
export const IN_SERVICE_SCOPES: readonly WorkScope[] = ['start-up-retorque', 'live-tightening', 'hot-bolting'];

/** The stages that a make of this work scope passes, in order. */
export function stagesFor(scope: WorkScope): readonly Stage[] {
  return STAGES_OF_SCOPE[scope];
}

export function passesStage(scope: WorkScope, stage: Stage): boolean {
  return stagesFor(scope).includes(stage);
}

/** The stage before this one in the scope; null when the scope does not pass it or begins with it. */
export function stageBefore(scope: WorkScope, stage: Stage): Stage | null {
  const stages = stagesFor(scope);
  const index = stages.indexOf(stage);
  return index > 0 ? (stages[index - 1] ?? null) : null;
}

/** Whether a make of this scope at stage `at` has reached `stage` (or, where the scope skips it, what follows it). */
export function hasReached(at: Stage, stage: Stage): boolean {
  return FULL.indexOf(at) >= FULL.indexOf(stage);
}

const FULL: readonly Stage[] = STAGES_OF_SCOPE['break-and-remake'];
