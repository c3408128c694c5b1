import type { JointRow, RegisterAnswer, RegisterFilters, RegisterQuery, SelectionAnswer } from '@seatwell/contract';
import { loadPlaces } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { shutdownCounts } from '../reading/stage-counts.ts';
import { type JointRowColumns, jointRowsSql, toJointRow } from './joint-row.ts';
import { registerTotal, wholeRegister } from './register-counts.ts';
import { registerConditions, Values } from './register-filters.ts';
import {
  cursorOf,
  keyset,
  type Position,
  positionOf,
  type Stretch,
  stretchesFrom,
  stretchesOf,
} from './register-order.ts';

interface Found {
  readonly row: JointRow;
  readonly at: Position;
}

async function readStretch(
  reading: Reading,
  query: RegisterQuery,
  stretch: Stretch,
  after: Position | null,
  limit: number,
  skipped: number,
): Promise<Found[]> {
  const values = new Values();
  const conditions = registerConditions(reading, query, values);
  if (stretch.condition) conditions.push(stretch.condition(values));
  const { condition, order } = keyset(stretch, query.descending, after, values);
  if (condition) conditions.push(condition);
  const page = `SELECT j.* FROM joint j WHERE ${conditions.join(' AND ')} ORDER BY ${order('j')} LIMIT ${values.add(limit)} OFFSET ${values.add(skipped)}`;
  const lead = stretch.lead ? `p.${stretch.lead.column}` : 'NULL';
  const { rows } = await reading.db.query<JointRowColumns & { lead: Position['lead']; tagKey: string }>(
    jointRowsSql(page, order('p'), `, ${lead} AS lead, encode(p.tag_key, 'hex') AS "tagKey"`),
    values.list,
  );
  return rows.map((columns) => ({
    row: toJointRow(columns, reading),
    at: { stretch: stretch.id, lead: columns.lead, tagKey: columns.tagKey, jointId: columns.row.jointId },
  }));
}

async function rowsInStretch(reading: Reading, query: RegisterQuery, stretch: Stretch): Promise<number> {
  const values = new Values();
  const conditions = registerConditions(reading, query, values);
  if (stretch.condition) conditions.push(stretch.condition(values));
  const { rows } = await reading.db.query<{ count: number }>(
    `SELECT count(*) AS count FROM joint j WHERE ${conditions.join(' AND ')}`,
    values.list,
  );
  return rows[0]?.count ?? 0;
}

/** One page of the register: each joint behind the filters comes exactly once, whatever is equal in the order. */
export async function registerPage(reading: Reading, query: RegisterQuery): Promise<RegisterAnswer> {
  const position = positionOf(query);
  const [page, counts] = await Promise.all([
    readPage(reading, query, position),
    position || query.from ? null : headline(reading, query),
  ]);
  const last = page.length > query.limit ? page[query.limit - 1] : undefined;
  return {
    rows: page.slice(0, query.limit).map((found) => found.row),
    next: last ? cursorOf(query, last.at) : null,
    ...(counts ?? { total: null, registerTotal: null, withoutTarget: null, foundCount: null }),
  };
}

async function readPage(reading: Reading, query: RegisterQuery, position: Position | null): Promise<Found[]> {
  const placed = query.sort === 'area' || query.sort === 'system' || query.sort === 'crew';
  const places = placed ? await loadPlaces(reading) : { areas: new Map(), systems: new Map(), crews: new Map() };
  const stretches = stretchesFrom(stretchesOf(query, places), position);
  const found: Found[] = [];
  let toSkip = position ? 0 : (query.from ?? 0);
  // One more than the page, so that the last page knows that it is the last.
  for (const stretch of stretches) {
    const after = position?.stretch === stretch.id ? position : null;
    const rows = await readStretch(reading, query, stretch, after, query.limit + 1 - found.length, toSkip);
    // A stretch that has no row so far on is passed over whole.
    if (toSkip > 0) toSkip = rows.length > 0 ? 0 : Math.max(0, toSkip - (await rowsInStretch(reading, query, stretch)));
    found.push(...rows);
    if (found.length > query.limit) break;
  }
  return found;
}

async function headline(
  reading: Reading,
  query: RegisterQuery,
): Promise<Pick<RegisterAnswer, 'total' | 'registerTotal' | 'withoutTarget' | 'foundCount'>> {
  const [total, counts, whole] = await Promise.all([
    registerTotal(reading, query),
    shutdownCounts(reading),
    wholeRegister(reading),
  ]);
  return { total, registerTotal: Object.values(counts).reduce((sum, count) => sum + count, 0), ...whole };
}

const SELECTION_LIMIT = 20_000;

/** Ids and versions of the joints behind the filters, by tag, for a list command. */
export async function registerSelection(reading: Reading, filters: RegisterFilters): Promise<SelectionAnswer> {
  const values = new Values();
  const conditions = registerConditions(reading, filters, values);
  const { rows } = await reading.db.query<SelectionAnswer['rows'][number]>(
    `SELECT j.joint_id AS "jointId", j.make_id AS "makeId", j.version, j.tag FROM joint j
     WHERE ${conditions.join(' AND ')} ORDER BY j.tag_key, j.joint_id LIMIT ${values.add(SELECTION_LIMIT + 1)}`,
    values.list,
  );
  return { rows: rows.slice(0, SELECTION_LIMIT), truncated: rows.length > SELECTION_LIMIT };
}
