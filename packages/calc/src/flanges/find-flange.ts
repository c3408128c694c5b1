import { refuse } from '../refusal.ts';
import { citation } from '../tables/sourced-table.ts';
import type { Warning } from '../working.ts';
import { type FlangeRow, flangeRows, flangeTable } from './flange-rows.ts';
import { type FlangeStandard, flangeRating, flangeSize, flangeStandard } from './keys.ts';

/** A flange of a standard, millimetres. */
export interface Flange {
  readonly standard: FlangeStandard;
  readonly size: string;
  readonly rating: string;
  readonly boltCount: number;
  readonly boltThread: string;
  readonly boltHole_mm: number;
  readonly boltCircle_mm: number;
  readonly outsideDiameter_mm: number;
  readonly thickness_mm: number;
  /** EN 1092-1 type 11: true; ASME: false. Grip and stud length differ by two faces. */
  readonly thicknessIncludesRaisedFace: boolean;
  readonly raisedFaceDiameter_mm: number;
  readonly raisedFaceHeight_mm: number;
  readonly ringGroove?: string;
  readonly studLength_mm?: number;
  readonly studLengthRingJoint_mm?: number;
  readonly source: string;
  readonly confidence: string;
  readonly warnings: readonly Warning[];
}

export interface FlangeKey {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  /** Where the standard leaves it open (EN 1092-1 DN 65 PN 10 and 16): 4 or 8. */
  readonly boltCount?: number;
}

/** EN 1092-1 facing height f1 by size (from memory of the standard). */
function enRaisedFace_mm(dn: number): number {
  if (dn <= 32) return 2;
  if (dn <= 250) return 3;
  return dn <= 500 ? 4 : 5;
}

function boltCountOf(row: FlangeRow, asked: number | undefined): number {
  const isOpen = row.note.includes('4 by agreement');
  if (isOpen && asked === undefined) {
    refuse(
      'boltCount',
      'bolt-count-must-be-given',
      `${row.size} ${row.rating} of EN 1092-1 has 8 bolts, or 4 by agreement and on older flanges. Count the holes and give boltCount 4 or 8.`,
      '4 or 8',
    );
  }
  const allowed = isOpen ? [4, 8] : [row.boltCount];
  if (asked !== undefined && !allowed.includes(asked)) {
    refuse(
      'boltCount',
      'bolt-count-not-of-this-flange',
      `${row.size} ${row.rating} has ${allowed.join(' or ')} bolts by its standard; ${asked} were given. Correct the count or describe a custom flange.`,
      allowed.join(' or '),
    );
  }
  return asked ?? row.boltCount;
}

function flangeWarnings(standard: FlangeStandard, row: FlangeRow): Warning[] {
  const warnings: Warning[] = [];
  if (standard === 'ASME-B16.47-A' && row.rating === '600' && row.size === 'NPS36') {
    warnings.push({
      code: 'sources-disagree',
      message: 'Bolt size 2 1/2 in is kept against one source that has 2 1/4 in: check the flange.',
    });
  }
  if (row.sourcesAgreeing <= 1) {
    warnings.push({
      code: 'weak-source',
      message:
        row.sourcesAgreeing === 0
          ? `${row.size} ${row.rating} is from memory of the standard, without a second source: check the flange.`
          : `${row.size} ${row.rating} rests on a single public source: check the flange.`,
    });
  }
  return warnings;
}

/**
 * Looks up a flange of a standard.
 *
 * Source: tables of this package, transcribed from public reproductions; the answer carries the statement.
 * @param key.standard `ASME-B16.5`, `ASME-B16.47-A`, `ASME-B16.47-B`, `EN-1092-1`
 * @param key.boltCount only where the standard leaves it open
 * @throws CalcRefusal `unknown-standard`, `unknown-size`, `unknown-rating`, `flange-not-in-table`,
 *   `bolt-count-must-be-given`, `bolt-count-not-of-this-flange`, `thickness-unknown`
 * @example findFlange({ standard: 'ASME-B16.5', size: 'NPS8', rating: '150' }).boltCount // 8
 */
export function findFlange(key: FlangeKey): Flange {
  const standard = flangeStandard(key.standard);
  const size = flangeSize(key.size);
  const rating = flangeRating(key.rating);
  const row = flangeRows(standard).get(`${size} ${rating}`);
  if (row === undefined) {
    const ratings = listFlangeRatings(standard, size);
    refuse(
      'size',
      'flange-not-in-table',
      ratings.length > 0
        ? `${standard} ${size} has no rating ${rating} in the table; it has ${ratings.join(', ')}.`
        : `${standard} has no size ${size} in the table; it has ${listFlangeSizes(standard).join(', ')}.`,
    );
  }
  const boltCount = boltCountOf(row, key.boltCount);
  if (row.thickness_mm === undefined) {
    refuse(
      'thickness_mm',
      'thickness-unknown',
      `The thickness of ${standard} ${size} ${rating} is not known here. Measure it and describe a custom flange.`,
    );
  }
  const table = flangeTable(standard);
  const en = standard === 'EN-1092-1';
  return {
    standard,
    size,
    rating,
    boltCount,
    boltThread: row.boltThread,
    boltHole_mm: row.boltHole_mm,
    boltCircle_mm: row.boltCircle_mm,
    outsideDiameter_mm: row.outsideDiameter_mm,
    thickness_mm: row.thickness_mm,
    thicknessIncludesRaisedFace: en,
    raisedFaceDiameter_mm: row.raisedFaceDiameter_mm,
    raisedFaceHeight_mm: row.raisedFaceHeight_mm ?? enRaisedFace_mm(Number(size.slice(2))),
    ...(row.ringGroove === '' ? {} : { ringGroove: row.ringGroove }),
    ...(row.studLength_mm === undefined ? {} : { studLength_mm: row.studLength_mm }),
    ...(row.studLengthRingJoint_mm === undefined ? {} : { studLengthRingJoint_mm: row.studLengthRingJoint_mm }),
    source: citation(table),
    confidence: table.confidence,
    warnings: flangeWarnings(standard, row),
  };
}

const inOrder = (a: string, b: string) => Number(a.replace(/\D+/, '')) - Number(b.replace(/\D+/, ''));

/** Sizes of a standard, or only those that have the rating, small to large. */
export function listFlangeSizes(standard: string, rating?: string): readonly string[] {
  const rows = [...flangeRows(flangeStandard(standard)).values()];
  const wanted = rating === undefined ? undefined : flangeRating(rating);
  const sizes = rows.filter((row) => wanted === undefined || row.rating === wanted).map((row) => row.size);
  return [...new Set(sizes)].sort(inOrder);
}

/** Ratings of a standard, or only those of the size, low to high. */
export function listFlangeRatings(standard: string, size?: string): readonly string[] {
  const rows = [...flangeRows(flangeStandard(standard)).values()];
  const wanted = size === undefined ? undefined : flangeSize(size);
  const ratings = rows.filter((row) => wanted === undefined || row.size === wanted).map((row) => row.rating);
  return [...new Set(ratings)].sort(inOrder);
}
