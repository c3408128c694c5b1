import type { ImportOutcome, ImportPreview } from '@seatwell/contract';
import { comparableTag, type JointState } from '@seatwell/workflow';
import { copyInto, copyLines } from '../../platform/database/copy-rows.ts';
import type { Transaction } from '../../platform/database/pool.ts';
import type { Draft } from './drafts.ts';
import type { NamedThings } from './named-things.ts';
import { type PlannedRow, planRow, shownValues } from './plan-row.ts';
import type { ReadRow } from './read-rows.ts';
import { inSlices } from './slices.ts';

/** Rows that the database takes at once, and rows that are planned before other requests get their turn. */
const KEPT_AT_ONCE = 500;
const PLANNED_AT_ONCE = 25;

interface KnownJoint {
  readonly jointId: string;
  readonly tag: string;
}

/** The shutdown's joints by their tags as tags are compared. */
export async function knownJoints(
  tx: Transaction,
  siteId: string,
  shutdownId: string,
): Promise<Map<string, KnownJoint>> {
  const { rows } = await tx.query<KnownJoint>(
    'SELECT joint_id AS "jointId", tag FROM joint WHERE site_id = $1 AND shutdown_id = $2 ORDER BY joint_id DESC',
    [siteId, shutdownId],
  );
  return new Map(rows.map((row) => [comparableTag(row.tag), row]));
}

/** States of a slice's joints, and places that other shutdowns have given its tags. */
async function knownOfSlice(
  tx: Transaction,
  draft: Draft,
  siteId: string,
  slice: readonly ReadRow[],
  joints: ReadonlyMap<string, KnownJoint>,
) {
  const tags = slice.flatMap(({ reading }) => (reading.values.tag === undefined ? [] : [reading.values.tag]));
  const ids = tags.flatMap((tag) => joints.get(comparableTag(tag))?.jointId ?? []);
  const states = await tx.query<{ joint_id: string; state: JointState }>({
    name: 'import-states',
    text: 'SELECT joint_id, state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = ANY($3::uuid[])',
    values: [siteId, draft.shutdownId, ids],
  });
  const places = await tx.query<{ tag: string; place_id: string }>({
    name: 'import-places',
    text: `SELECT tag, (array_agg(place_id ORDER BY place_id))[1] AS place_id FROM joint_place
           WHERE site_id = $1 AND tag = ANY($2) GROUP BY tag HAVING count(*) = 1`,
    values: [siteId, tags],
  });
  return {
    states: new Map(states.rows.map((row) => [row.joint_id, row.state])),
    places: new Map(places.rows.map((row) => [row.tag, row.place_id])),
  };
}

const ROW_COLUMNS = [
  'site_id',
  'import_id',
  'row_number',
  'outcome',
  'tag',
  'joint_id',
  'version',
  'problems',
  'shown',
  'plan',
];

/** The rows as they are kept: what pages of the preview show, and what confirming will do. */
const linesOf = (siteId: string, importId: string, rows: readonly { read: ReadRow; planned: PlannedRow }[]): string =>
  copyLines(
    ROW_COLUMNS,
    rows.map(({ read, planned }) => ({
      site_id: siteId,
      import_id: importId,
      row_number: read.reading.rowNumber,
      outcome: planned.outcome,
      tag: read.reading.values.tag ?? '',
      joint_id: planned.jointId,
      version: planned.version,
      problems: planned.problems.length,
      shown: {
        values: shownValues(read.reading.values),
        filled: read.reading.filled,
        stage: planned.stage,
        differences: planned.differences,
        problems: planned.problems,
      },
      plan: planned.plan,
    })),
  );

export interface Tally {
  readonly counts: ImportPreview['counts'];
  assigned: number;
}

interface Planning {
  readonly tx: Transaction;
  readonly siteId: string;
  readonly draft: Draft;
  readonly rows: readonly ReadRow[];
  readonly joints: ReadonlyMap<string, KnownJoint>;
  readonly things: NamedThings;
  /** told after each part how many rows are planned */
  readonly progress: (rows: number) => Promise<void>;
}

/**
 * Plans every row against the register and keeps what was planned. While the database takes one part, the next is
 * planned: each of the two would otherwise wait for the other half of the time.
 */
export async function planAll(planning: Planning): Promise<Tally> {
  const { tx, siteId, draft, rows, joints, progress } = planning;
  const tally: Tally = { counts: { rows: rows.length, new: 0, changed: 0, same: 0, error: 0, noted: 0 }, assigned: 0 };
  let planned = 0;
  let write = async () => {};
  for await (const part of inSlices(rows, KEPT_AT_ONCE)) {
    const known = await knownOfSlice(tx, draft, siteId, part, joints);
    const [, lines] = await Promise.all([write(), plannedLines(planning, part, known, tally)]);
    write = async () => {
      await copyInto(tx, 'import_row', ROW_COLUMNS, lines);
    };
    planned += part.length;
    await progress(planned);
  }
  await write();
  return tally;
}

async function plannedLines(
  { siteId, draft, joints, things }: Planning,
  part: readonly ReadRow[],
  known: Awaited<ReturnType<typeof knownOfSlice>>,
  tally: Tally,
): Promise<string> {
  const lines: string[] = [];
  for await (const slice of inSlices(part, PLANNED_AT_ONCE)) {
    const planned = slice.map((read) => {
      const { values } = read.reading;
      const place = things.place(values);
      const tag = values.tag ?? '';
      const found = joints.get(comparableTag(tag));
      const row = planRow({
        reading: read.reading,
        problems: read.problems,
        placed: place,
        joint: found ? (known.states.get(found.jointId) ?? null) : null,
        placeId: known.places.get(tag),
        fileName: draft.fileName,
        nameOf: (id) => things.nameOf(id),
      });
      if (row.outcome === 'new') things.use(values);
      else if (row.outcome === 'changed') things.use(values, ['areas', 'systems', 'crews']);
      tally.counts[row.outcome satisfies ImportOutcome] += 1;
      if (row.outcome !== 'error' && row.problems.length > 0) tally.counts.noted += 1;
      if (row.plan?.assigned) tally.assigned += 1;
      return { read, planned: row };
    });
    lines.push(linesOf(siteId, draft.importId, planned));
  }
  return lines.join('');
}
