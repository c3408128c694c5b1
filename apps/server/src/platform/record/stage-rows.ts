import { copyInto, copyLines } from '../database/copy-rows.ts';
import type { Transaction } from '../database/pool.ts';
import { canonicalBytes } from './canonical.ts';
import { appendLeaf, frontierRoot, leafHash } from './merkle.ts';

export interface RowToAppend {
  readonly jointId: string;
  readonly makeId: string | null;
  readonly payload: unknown;
  readonly evidence: unknown;
}

/** The rows of a batch as they were staged: what the event vouches for. */
export interface StagedRows {
  readonly count: number;
  readonly root: Buffer | null;
}

export interface Stage {
  /** hashes the next rows and answers them as they are copied; what is prepared has to be copied */
  prepare(rows: readonly RowToAppend[]): string;
  copy(lines: string): Promise<void>;
  add(rows: readonly RowToAppend[]): Promise<void>;
  staged(): StagedRows;
}

const ROWS_AT_ONCE = 500;
const COLUMNS = [
  'site_id',
  'stream_id',
  'event_id',
  'row',
  'joint_id',
  'make_id',
  'payload',
  'evidence',
  'canonical',
  'leaf',
];

/**
 * Writes the rows of a batch ahead of its event, part by part: a long list must neither hold the stream's head nor
 * the process. The event that they hang under is appended last, with what `staged()` answers.
 */
export function stageRows(
  tx: Transaction,
  event: { readonly siteId: string; readonly streamId: string; readonly eventId: string },
): Stage {
  let frontier: Buffer[] = [];
  let count = 0;
  const line = (row: RowToAppend) => {
    const canonical = canonicalBytes(row);
    const leaf = leafHash(canonical);
    const columns = {
      site_id: event.siteId,
      stream_id: event.streamId,
      event_id: event.eventId,
      row: count,
      joint_id: row.jointId,
      make_id: row.makeId,
      // As text of its own, since a payload may be null or a list, which COPY would take for a column's.
      payload: JSON.stringify(row.payload),
      evidence: JSON.stringify(row.evidence),
      canonical,
      leaf,
    };
    frontier = appendLeaf(frontier, count, leaf);
    count += 1;
    return columns;
  };
  const prepare = (rows: readonly RowToAppend[]) => copyLines(COLUMNS, rows.map(line));
  const copy = async (lines: string) => {
    await copyInto(tx, 'event_row', COLUMNS, lines);
  };
  return {
    prepare,
    copy,
    add: async (rows) => {
      for (let from = 0; from < rows.length; from += ROWS_AT_ONCE)
        await copy(prepare(rows.slice(from, from + ROWS_AT_ONCE)));
    },
    staged: () => ({ count, root: count > 0 ? frontierRoot(frontier) : null }),
  };
}
