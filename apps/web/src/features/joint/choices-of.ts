import { CHECKING_LEVELS, GASKET_FAMILIES_KNOWN, MAKE_PURPOSES } from '@seatwell/contract';

const conditions = ['clean', 'light-marks', 'scored', 'corroded', 'damaged'] as const;
const boltingConditions = ['new', 'reused'] as const;

/**
 * Codes that may stand at a place of a fact, lists written as `*`. The contract says the same (its test compares
 * them); its schemas themselves are too much for a phone to load.
 */
export const CHOICES: Readonly<Record<string, readonly string[]>> = {
  'faces-inspected faces.*.condition': conditions,
  'faces-inspected bolting.condition': boltingConditions,
  'nipped-up gasket.family': GASKET_FAMILIES_KNOWN,
  'nipped-up gasket.purpose': MAKE_PURPOSES,
  'nipped-up bolting.condition': boltingConditions,
  'pass-recorded outcome': ['finished', 'interrupted'],
  'loosened extent': ['some', 'all'],
  'leak-found when': ['test', 'start-up', 'service'],
  'checked level': CHECKING_LEVELS,
  'checked outcome': ['accepted', 'rejected'],
};

/**
 * The codes that the contract allows at a place of an event's payload.
 * @returns undefined where anything may be written
 */
export const choicesOf = (type: string, path: readonly (string | number)[]): readonly string[] | undefined =>
  CHOICES[`${type} ${path.map((part) => (typeof part === 'number' ? '*' : part)).join('.')}`];
