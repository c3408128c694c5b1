import type { MakeAnswer } from '@seatwell/contract';

export const taskNames = [
  'open',
  'faces',
  'nip-up',
  'tighten',
  'self',
  'chargehand',
  'stud',
  'loosen',
  'leak',
  'punch',
  'hold',
] as const;
export type TaskName = (typeof taskNames)[number];

/** The task that moves a make on from what it waits for; null where it waits for somebody else's decision. */
export function taskFor(make: Pick<MakeAnswer, 'waitsFor'>): TaskName | null {
  const { code, data } = make.waitsFor;
  switch (code) {
    case 'opening':
      return 'open';
    case 'faces':
    case 'faces-again':
      return 'faces';
    case 'nip-up':
      return 'nip-up';
    case 'pass':
    case 'final-round':
    case 'relaxation-pass':
      return 'tighten';
    case 'check':
      return data.level === 'self' || data.level === 'chargehand' ? data.level : null;
    default:
      return null;
  }
}

/** A task named in an address; undefined where there is no such task. */
export function taskNamed(name: unknown): TaskName | undefined {
  return taskNames.find((each) => each === name);
}

/** Work beside the plan that can happen at any time, with the event that says whether it fits now. */
export const besideThePlan = [
  { task: 'leak', event: 'leak-found' },
  { task: 'loosen', event: 'loosened' },
  { task: 'stud', event: 'stud-replaced' },
  { task: 'punch', event: null },
  { task: 'hold', event: null },
] as const;
