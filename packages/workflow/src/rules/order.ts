import type { EventType } from '@seatwell/contract';
import { overtakenBy } from '../derived/makes.ts';
import { outOfOrder } from '../fold/order.ts';
import { type Rule, rule } from './rule.ts';

/** Events by which a make is worked, checked and proven: none of them on hold, on a void joint or on history. */
const ON_HOLD_STOPS = {
  released: ['break-released'],
  open: ['opened'],
  faces: ['faces-inspected'],
  'nipped-up': ['nipped-up'],
  passes: ['pass-recorded', 'relaxation-pass-recorded', 'stud-replaced'],
  tight: ['final-round-recorded'],
  checked: ['checked'],
  proven: ['proven'],
  'handed-over': ['hand-over-offered', 'handed-over'],
} as const satisfies Record<string, readonly EventType[]>;

// Loosening and leaks are always told: a hold never hides what makes the joint less safe.
const IN_WORK_ONLY = [
  'procedure-assigned',
  'target-approved',
  'break-released',
  'opened',
  'faces-inspected',
  'nipped-up',
  'pass-recorded',
  'final-round-recorded',
  'relaxation-pass-recorded',
  'stud-replaced',
  'loosened',
  'checked',
  'proven',
  'hand-over-offered',
  'handed-over',
] as const satisfies readonly EventType[];

const holdRules: readonly Rule[] = Object.entries(ON_HOLD_STOPS).map(([stage, events]) =>
  rule({
    code: `${stage}.not-on-hold`,
    sentence: 'The joint is not on hold.',
    why: 'Somebody stopped the work for a reason that the crew may not know.',
    remedy: 'Have the hold released by the role that it names.',
    clearedBy: ['inspector', 'engineer', 'coordinator'],
    floor: true,
    events: events as readonly EventType[],
    test: (_payload, { joint }) => {
      const [hold] = joint.holds;
      return hold
        ? { detail: `On hold since ${hold.placedAt}: ${hold.reason}.`, limit: `released by ${hold.releasedBy}` }
        : null;
    },
  }),
);

interface OrderWords {
  readonly code: string;
  readonly sentence: string;
  readonly events: readonly EventType[];
}

const ORDER: readonly OrderWords[] = [
  {
    code: 'engineered.before-tightening',
    sentence: 'Procedure and target are settled before the joint is tightened and checked.',
    events: ['procedure-assigned', 'target-approved'],
  },
  {
    code: 'engineered.procedure-first',
    sentence: 'A target is approved for a make that has its procedure.',
    events: ['target-approved'],
  },
  {
    code: 'released.engineered-first',
    sentence: 'A joint is released once its procedure and target are approved.',
    events: ['break-released'],
  },
  { code: 'open.released-first', sentence: 'A joint is opened once operations has released it.', events: ['opened'] },
  {
    code: 'faces.open-first',
    sentence: 'Faces are inspected while the joint is open.',
    events: ['faces-inspected'],
  },
  {
    code: 'nipped-up.faces-first',
    sentence: 'A joint is nipped up once its faces are accepted.',
    events: ['nipped-up'],
  },
  {
    code: 'passes.nipped-up-first',
    sentence: 'Tightening begins once the joint is nipped up.',
    events: ['pass-recorded'],
  },
  {
    code: 'passes.in-order',
    sentence: 'Passes are made in order, and an interrupted pass is repeated.',
    events: ['pass-recorded'],
  },
  {
    code: 'tight.passes-first',
    sentence: 'The final round follows the last pass.',
    events: ['final-round-recorded'],
  },
  {
    code: 'tight.before-relaxation',
    sentence: 'A relaxation pass is made on a tight joint.',
    events: ['relaxation-pass-recorded'],
  },
  { code: 'stud.bolts-in', sentence: 'A stud is replaced in a closed joint.', events: ['stud-replaced'] },
  { code: 'loosened.bolts-in', sentence: 'A closed joint is loosened.', events: ['loosened'] },
  {
    code: 'checked.tight-first',
    sentence: 'A joint is checked once it is tight, neither rejected nor leaking.',
    events: ['checked'],
  },
  {
    code: 'witnessed.at-its-stage',
    sentence: 'A point is witnessed while it is at hand.',
    events: ['witnessed', 'witness-waived'],
  },
  { code: 'proven.checked-first', sentence: 'A joint is proven once it is checked.', events: ['proven'] },
  {
    code: 'handed-over.proven-first',
    sentence: 'A joint is offered and handed over once it is proven.',
    events: ['hand-over-offered', 'handed-over'],
  },
  {
    code: 'taken-back.handed-over-first',
    sentence: 'Only a joint that was handed over is taken back.',
    events: ['taken-back'],
  },
];

const orderRules: readonly Rule[] = ORDER.map((words) =>
  rule({
    ...words,
    why: 'Each stage stands on the one before it.',
    remedy: 'Record what is missing, then this.',
    clearedBy: ['chargehand'],
    floor: true,
    test: (payload, { make }, type) => {
      const finding = outOfOrder(make, type, payload);
      return finding?.code === words.code ? { detail: finding.detail } : null;
    },
  }),
);

const inWork: readonly Rule[] = [
  rule({
    code: 'make.in-work',
    sentence: 'The make is planned, its joint is in the register, and no later make has been begun.',
    why: 'Work recorded on the wrong make is lost for the right one.',
    remedy: 'Record it on the make that the joint is in, or have the coordinator plan one.',
    clearedBy: ['coordinator'],
    floor: true,
    events: IN_WORK_ONLY,
    test: (_payload, { joint, make }) => {
      if (joint.voided) return { detail: `The joint is void (${joint.voided.why}): ${joint.voided.reason}.` };
      if (make.cancelled) return { detail: `Make ${make.number} is cancelled.` };
      const later = overtakenBy(joint, make);
      return later ? { detail: `Make ${later.number} has been begun; make ${make.number} is history.` } : null;
    },
  }),
];

export const orderAndHoldRules: readonly Rule[] = [...orderRules, ...holdRules, ...inWork];
