import type { JointRow, RegisterAnswer } from '@seatwell/contract';

/** Rows that are asked for at once: what is in sight and around it lies in two blocks at most. */
export const blockRows = 150;
// Where the server says "at least so many", the bar reaches this far beyond what is known.
const rowsAhead = 1500;

/** Parts of the list by their number: block 2 begins with row 300. */
export type Blocks = ReadonlyMap<number, RegisterAnswer>;

/** The blocks that hold these rows, the first and the last included. */
export function blocksOf(first: number, last: number): readonly number[] {
  const from = Math.floor(Math.max(0, first) / blockRows);
  const to = Math.floor(Math.max(0, last) / blockRows);
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}

/** How many rows the table offers: all of them, or as many as are known and some more while nobody has counted. */
export function rowCountOf(found: RegisterAnswer['total'] | undefined, blocks: Blocks): number {
  let furthest = 0;
  let end = Number.POSITIVE_INFINITY;
  for (const [block, { rows, next }] of blocks) {
    const last = block * blockRows + rows.length;
    if (rows.length > 0) furthest = Math.max(furthest, last);
    if (next === null) end = Math.min(end, Math.max(last, 0));
  }
  if (found?.exact) return found.count;
  return Number.isFinite(end) ? Math.max(end, furthest) : Math.max(found?.count ?? 0, furthest) + rowsAhead;
}

/** The rows at their places; what is not loaded is left open. */
export function rowsOf(blocks: Blocks, rowCount: number): readonly (JointRow | undefined)[] {
  const rows = new Array<JointRow | undefined>(rowCount);
  for (const [block, answer] of blocks)
    answer.rows.forEach((row, index) => {
      if (block * blockRows + index < rowCount) rows[block * blockRows + index] = row;
    });
  return rows;
}
