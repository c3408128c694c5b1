import { POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import { citation } from '../tables/sourced-table.ts';
import { parseThread } from '../threads/designation.ts';
import type { Warning } from '../working.ts';
import { GRADE_PAIRING } from './pairing.ts';
import { type StrengthRow, strengthRows } from './strength-rows.ts';
import { BOLTING_STRENGTH } from './tables/strength.ts';

export interface BoltingGrade {
  readonly grade: string;
  readonly specification: string;
  readonly yield_MPa: number;
  readonly tensile_MPa: number;
  readonly proof_MPa?: number;
  /** Yield of 30 ksi or less: low classes and soft gaskets only (ASME B31.3 309). */
  readonly lowStrength: boolean;
  readonly nuts: readonly string[];
  readonly maximumHardness_HBW?: number;
  readonly source: string;
  readonly warnings: readonly Warning[];
}

/** 30 ksi, the border of low-strength bolting in B31.3 309. */
const LOW_STRENGTH_MPA = 30 * 6.894757;
const INCH_MM = 25.4;

/** Grades of the table in its own spelling. */
export const BOLTING_GRADES: readonly string[] = [...strengthRows.keys()];

const spelled = new Map<string, string>();

/** `ASTM A193 B8 Cl.1`, `A193-B7`, `b8m class 2` and `8.8` in the spelling of the table. */
function gradeKey(text: string): string {
  const known = spelled.get(text);
  if (known !== undefined) return known;
  const compact = text
    .toUpperCase()
    .replace(/ASTM|SA?[- ]?193|SA?[- ]?320|A[- ]?193|A[- ]?320|ISO 898-1|GRADE|GR\.?/g, ' ')
    .replace(/CLASS|CL\.?/g, ' CLASS ')
    .replace(/[\s-]+/g, ' ')
    .trim();
  const withClass = /^(B8M?) (?:CLASS )?([12])$/.exec(compact);
  const key = withClass === null ? compact : `${withClass[1]} Class ${withClass[2]}`;
  const found = BOLTING_GRADES.find((grade) => grade === key);
  if (found === undefined) {
    if (/^(B8M?)$/.test(key)) {
      refuse(
        'grade',
        'grade-class-must-be-given',
        `${key} has class 1 (205 MPa yield) and class 2. Write "${key} Class 1" or "${key} Class 2".`,
      );
    }
    refuse(
      'grade',
      'bolting-strength-missing',
      `The strength of "${text}" is not in the tables (${BOLTING_GRADES.join(', ')}). Enter its yield with its source.`,
    );
  }
  if (spelled.size < 200) spelled.set(text, found);
  return found;
}

function stepOf(rows: readonly StrengthRow[], diameter_mm: number, inch: boolean): StrengthRow | undefined {
  const diameter = inch ? diameter_mm / INCH_MM : diameter_mm;
  return rows.find((row) => {
    const over = inch ? row.over_in : row.over_mm;
    const upTo = inch ? row.upTo_in : row.upTo_mm;
    return diameter > over && diameter <= upTo + 1e-9;
  });
}

/** A diameter that is a whole number of eighths of an inch counts by the inch steps. */
function isInchSize(diameter_mm: number): boolean {
  const eighths = (diameter_mm / INCH_MM) * 8;
  return Math.abs(eighths - Math.round(eighths)) < 1e-6 && !Number.isInteger(diameter_mm);
}

/**
 * Strength of a bolting grade at a diameter.
 *
 * Source: ASTM A193/A193M, A320/A320M, ISO 898-1 (table of this package); nut pairing from memory.
 * @param input.grade `B7`, `B7M`, `B16`, `B8 Class 1`, `L7`, `8.8` …, with or without the specification
 * @param input.diameter_mm nominal diameter, or give the thread
 * @throws CalcRefusal `bolting-strength-missing`, `grade-class-must-be-given`, `diameter-out-of-table`, `out-of-range`
 * @example boltingGrade({ grade: 'B7', diameter_mm: 70 }).yield_MPa // 655
 */
export function boltingGrade(input: {
  readonly grade: string;
  readonly diameter_mm?: number;
  readonly thread?: string;
}): BoltingGrade {
  const thread = input.thread === undefined ? undefined : parseThread(input.thread);
  const diameter_mm = thread?.nominalDiameter_mm ?? input.diameter_mm;
  if (diameter_mm === undefined) {
    refuse(
      'diameter_mm',
      'diameter-must-be-given',
      'The strength of a grade falls with diameter. Give diameter_mm or thread.',
    );
  }
  requireInRange([['diameter_mm', diameter_mm, POSITIVE]]);
  const grade = gradeKey(input.grade);
  const rows = strengthRows.get(grade) ?? [];
  const row = stepOf(rows, diameter_mm, thread === undefined ? isInchSize(diameter_mm) : thread.system === 'inch');
  if (row === undefined) {
    const largest = rows.at(-1);
    refuse(
      'diameter_mm',
      'diameter-out-of-table',
      `${grade} is listed up to ${largest?.upTo_mm} mm; the bolt has ${diameter_mm} mm. Enter its yield with its source.`,
      largest?.upTo_mm,
    );
  }
  const pairing = GRADE_PAIRING[grade];
  const hardness = pairing?.maximumHardness_HBW;
  return {
    grade,
    specification: row.specification,
    yield_MPa: row.yield_MPa,
    tensile_MPa: row.tensile_MPa,
    ...(row.proof_MPa === undefined ? {} : { proof_MPa: row.proof_MPa }),
    lowStrength: row.yield_MPa <= LOW_STRENGTH_MPA,
    nuts: pairing?.nuts ?? [],
    ...(hardness === undefined ? {} : { maximumHardness_HBW: hardness }),
    source: citation(BOLTING_STRENGTH),
    warnings: gradeWarnings(grade, row, hardness, pairing?.austenitic === true),
  };
}

function gradeWarnings(grade: string, row: StrengthRow, hardness: number | undefined, austenitic: boolean): Warning[] {
  const warnings: Warning[] = [];
  if (row.yield_MPa <= LOW_STRENGTH_MPA) {
    warnings.push({
      code: 'low-strength-bolting',
      message: `${grade} yields at ${row.yield_MPa} MPa: low classes and soft gaskets only (ASME B31.3 309).`,
    });
  }
  if (hardness !== undefined) {
    warnings.push({
      code: 'hardness-limited',
      message: `${grade} is limited to ${hardness} HBW: check the certificates of studs and nuts.`,
    });
  }
  if (austenitic) {
    warnings.push({
      code: 'galling',
      message: `${grade} on ${grade} nuts seizes without an anti-seize compound; its friction is not that of carbon steel.`,
    });
  }
  return warnings;
}

/** Whether a nut may go on a stud of the grade, and which nuts may. */
export function nutPairing(input: { readonly grade: string; readonly nut: string }): {
  readonly accepted: boolean;
  readonly nuts: readonly string[];
  readonly source: string;
} {
  const grade = gradeKey(input.grade);
  const nuts = GRADE_PAIRING[grade]?.nuts ?? [];
  const asked = input.nut.toUpperCase().replace(/^ASTM\s*/, '');
  const accepted = nuts.some((nut) => nut.toUpperCase() === asked || nut.toUpperCase() === `A194 ${asked}`);
  return { accepted, nuts, source: 'ASTM A193, A320 and ISO 898-2 (from memory)' };
}
