import { z } from 'zod';
import { Problem } from '../../../platform/errors/problem.ts';

const A4_MM = { width: 210, height: 297 };
const LEAST_MM = { width: 45, height: 20 };
/** From this size a tag has its facts beside the code and stubs to tear off below. */
const LEAST_WITH_STUBS_MM = { width: 80, height: 120 };

const margin = z.number().min(0).max(60);
const gap = z.number().min(0).max(30);

/** How tags lie on an A4 sheet, as the pack of labels says: counts, margins and gaps in millimetres. */
export const tagGeometry = z.strictObject({
  columns: z.int().min(1).max(4),
  rows: z.int().min(1).max(13),
  marginX_mm: margin,
  marginY_mm: margin,
  gapX_mm: gap.default(0),
  gapY_mm: gap.default(0),
  /** the first label that is still on the sheet, counted along the rows from 1 */
  first: z.int().min(1).max(52).default(1),
});
export type TagGeometry = z.infer<typeof tagGeometry>;

/** Four cards with stubs on plain paper or card. */
export const CARDS: TagGeometry = {
  columns: 2,
  rows: 2,
  marginX_mm: 10,
  marginY_mm: 10,
  gapX_mm: 4,
  gapY_mm: 5,
  first: 1,
};

export interface TagSize {
  readonly width_mm: number;
  readonly height_mm: number;
  readonly stubs: boolean;
}

/**
 * The size of one tag, and whether it has room for stubs.
 * @throws Problem `bad-input` for labels too small to be scanned and read, and a first label that is not on the sheet
 */
export function tagSize({ columns, rows, marginX_mm, marginY_mm, gapX_mm, gapY_mm, first }: TagGeometry): TagSize {
  const width_mm = (A4_MM.width - 2 * marginX_mm - (columns - 1) * gapX_mm) / columns;
  const height_mm = (A4_MM.height - 2 * marginY_mm - (rows - 1) * gapY_mm) / rows;
  if (width_mm < LEAST_MM.width || height_mm < LEAST_MM.height) {
    const size = `${width_mm.toFixed(1)} × ${height_mm.toFixed(1)} mm`;
    const least = `${LEAST_MM.width} × ${LEAST_MM.height} mm`;
    throw new Problem(
      'bad-input',
      `The labels would be ${size}; to be scanned and read they take at least ${least}. Choose fewer columns or rows, or smaller margins.`,
    );
  }
  if (first > columns * rows)
    throw new Problem(
      'bad-input',
      `The sheet has ${columns * rows} labels; the first free one is given as ${first}. Give one of the sheet.`,
    );
  const stubs = width_mm >= LEAST_WITH_STUBS_MM.width && height_mm >= LEAST_WITH_STUBS_MM.height;
  return { width_mm, height_mm, stubs };
}
