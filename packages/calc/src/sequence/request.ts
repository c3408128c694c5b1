import { requireInRange } from '../checks.ts';
import { CalcRefusal, refuse } from '../refusal.ts';
import type { Explainable } from '../working.ts';

export const SEQUENCE_PATTERNS = [
  'legacy',
  'modified-legacy',
  'quadrant',
  'circular',
  'simultaneous',
  'simultaneous-circular',
] as const;
export type SequencePattern = (typeof SEQUENCE_PATTERNS)[number];

export interface SequenceRequest extends Explainable {
  /** Bolts of the joint, 4 to 200. */
  readonly boltCount: number;
  readonly pattern: SequencePattern;
  /** Neighbouring bolts taken one after another as one place of the pattern. */
  readonly group?: number;
  /** Bolts tightened at once. */
  readonly tools?: number;
  /** Rising shares of the target, percent; the last is 100. Default 30, 70, 100. */
  readonly passPercents?: readonly number[];
  /** `clockwise`: bolt 1 at the datum and onwards; `order`: numbered in tightening order of the pattern. */
  readonly numbering: 'clockwise' | 'order';
  /** Loosening: steps backwards, percents are the load left. */
  readonly reverse?: boolean;
  /** From where the positions are described. Labels are those on the flange, seen from the viewing side. */
  readonly viewedFrom?: 'viewing-side' | 'other-side';
  /** A relaxation pass is planned unless this is false. */
  readonly relaxation?: boolean;
}

/** Common practice: 20-30 %, 50-70 %, 100 %. */
export const DEFAULT_PASS_PERCENTS: readonly number[] = [30, 70, 100];

const isSimultaneous = (pattern: SequencePattern) => pattern.startsWith('simultaneous');

function requireWhole(path: string, value: number | undefined): void {
  if (value !== undefined && !Number.isInteger(value)) {
    refuse(path, 'not-a-whole-number', `${path} is ${value}; it must be a whole number.`);
  }
}

function checkPercents(percents: readonly number[]): void {
  const rising = percents.every((percent, i) => percent > (percents[i - 1] ?? 0));
  if (percents.length === 0 || !rising || percents.at(-1) !== 100) {
    refuse(
      'passPercents',
      'passes-must-rise-to-100',
      `Pass percents ${percents.join(', ')} must rise from above 0 and end at 100, for example 30, 70, 100.`,
      100,
    );
  }
}

function checkGroup(boltCount: number, group: number, tools: number, pattern: SequencePattern): void {
  if (isSimultaneous(pattern)) {
    refuse('group', 'group-not-with-pattern', `Pattern ${pattern} places tools, not groups. Leave out group.`);
  }
  if (tools > 1) {
    refuse('group', 'group-and-tools', 'Give either group or tools: with both the steps have no single meaning.');
  }
  if (boltCount % group !== 0 || boltCount / group < 4) {
    const fitting = Array.from({ length: Math.floor(boltCount / 4) }, (_, i) => i + 1).filter(
      (n) => boltCount % n === 0,
    );
    refuse(
      'group',
      'group-does-not-fit',
      `${boltCount} bolts do not make at least four equal groups of ${group}. Groups that fit: ${fitting.join(', ')}.`,
      fitting.join(', '),
    );
  }
}

function checkTools(boltCount: number, tools: number | undefined, pattern: SequencePattern): void {
  if (isSimultaneous(pattern)) {
    if (tools === undefined || tools < 2) {
      refuse(
        'tools',
        'tools-must-be-given',
        `Pattern ${pattern} needs the number of bolts tightened at once, at least 2. Give tools.`,
        2,
      );
    }
  } else if (pattern === 'circular' && tools !== undefined && tools > 1) {
    refuse(
      'tools',
      'tools-not-with-pattern',
      `Pattern circular is for one tool; for ${tools} tools use simultaneous-circular.`,
      1,
    );
  }
  if (tools !== undefined && tools > boltCount) {
    refuse('tools', 'more-tools-than-bolts', `${tools} tools were given for ${boltCount} bolts.`, boltCount);
  }
}

/**
 * Refuses a sequence request that has no meaning.
 * @throws CalcRefusal `out-of-range`, `not-a-whole-number`, `unknown-pattern`, `passes-must-rise-to-100`,
 *   `group-does-not-fit`, `group-and-tools`, `group-not-with-pattern`, `tools-must-be-given`,
 *   `tools-not-with-pattern`, `more-tools-than-bolts`
 */
export function checkSequenceRequest(input: SequenceRequest): void {
  requireInRange([
    ['boltCount', input.boltCount, { min: 4, max: 200 }],
    ['group', input.group, { min: 1 }],
    ['tools', input.tools, { min: 1 }],
  ]);
  requireWhole('boltCount', input.boltCount);
  requireWhole('group', input.group);
  requireWhole('tools', input.tools);
  if (!SEQUENCE_PATTERNS.includes(input.pattern)) {
    throw new CalcRefusal([
      {
        path: 'pattern',
        code: 'unknown-pattern',
        message: `Pattern "${input.pattern}" is unknown. Use one of ${SEQUENCE_PATTERNS.join(', ')}.`,
      },
    ]);
  }
  checkPercents(input.passPercents ?? DEFAULT_PASS_PERCENTS);
  if (input.group !== undefined && input.group > 1) {
    checkGroup(input.boltCount, input.group, input.tools ?? 1, input.pattern);
  }
  checkTools(input.boltCount, input.tools, input.pattern);
}
