import type { ImportChoices, ImportOutcome, ImportPreview } from '@seatwell/contract';
import {
  type ColumnMapping,
  type ColumnReading,
  columnLetter,
  comparableTag,
  findHeaderRow,
  guessColumns,
  headerRowAt,
  type JointState,
  plainText,
  type SheetRow,
} from '@seatwell/workflow';
import { uuidv7 } from 'uuidv7';
import { copyInto, copyLines } from '../../platform/database/copy-rows.ts';
import { type Database, inTransaction, type Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { checkedMapping, rememberChoices, rememberedChoices, withLastAnswers } from './choice-memory.ts';
import { type Draft, loadDraft, type StoredPreview, storePreview } from './drafts.ts';
import { NamedThings } from './named-things.ts';
import { type PlannedRow, planRow, shownValues } from './plan-row.ts';
import { type ReadRow, readRows } from './read-rows.ts';
import { sheetOfDraft } from './sheet-of-draft.ts';
import { inSlices, ROWS_IN_A_SLICE } from './slices.ts';

const TOP_ROWS = 30;
const SAMPLES = 4;

interface Header {
  readonly rowNumber: number;
  readonly headers: readonly string[];
  readonly rows: readonly SheetRow[];
}

/** @throws Problem `file-refused` where no row looks like a header and none was pointed at */
function headerOf(rows: readonly SheetRow[], chosen: number | null): Header | null {
  const cells = rows.slice(0, 2000).map((row) => row.cells);
  const at = chosen === null ? -1 : rows.findIndex((row) => row.rowNumber === chosen);
  if (chosen !== null && at < 0) {
    throw new Problem('bad-input', `Row ${chosen} of the sheet is empty. Choose the row that names the columns.`);
  }
  const found =
    at >= 0
      ? headerRowAt(
          rows.map((row) => row.cells),
          at,
        )
      : findHeaderRow(cells);
  if (!found) return null;
  return {
    rowNumber: rows[found.index]?.rowNumber ?? 1,
    headers: found.headers,
    rows: rows.slice(found.firstDataIndex),
  };
}

const understood = (column: ColumnReading | undefined): string | null => {
  if (!column) return null;
  const { unit, sizeSystem, ratingSystem, dateOrder, decimal } = column;
  return [unit, sizeSystem, ratingSystem, dateOrder, decimal].filter(Boolean).join(' ') || null;
};

interface KnownJoint {
  readonly jointId: string;
  readonly tag: string;
}

async function knownJoints(tx: Transaction, siteId: string, shutdownId: string): Promise<Map<string, KnownJoint>> {
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

async function insertRows(
  tx: Transaction,
  siteId: string,
  importId: string,
  rows: readonly { readonly read: ReadRow; readonly planned: PlannedRow }[],
): Promise<void> {
  const lines = copyLines(
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
  await copyInto(tx, 'import_row', ROW_COLUMNS, lines);
}

interface Tally {
  readonly counts: ImportPreview['counts'];
  assigned: number;
}

async function planAll(
  tx: Transaction,
  siteId: string,
  draft: Draft,
  rows: readonly ReadRow[],
  joints: ReadonlyMap<string, KnownJoint>,
  things: NamedThings,
): Promise<Tally> {
  const tally: Tally = { counts: { rows: rows.length, new: 0, changed: 0, same: 0, error: 0, noted: 0 }, assigned: 0 };
  for await (const slice of inSlices(rows, ROWS_IN_A_SLICE)) {
    const known = await knownOfSlice(tx, draft, siteId, slice, joints);
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
    await insertRows(tx, siteId, draft.importId, planned);
  }
  return tally;
}

/** What stands against confirming, apart from rows in error, which can be left out. */
function stopsOf(mapping: ColumnMapping, counts: ImportPreview['counts'], named: ImportPreview['named']) {
  const stops: ImportPreview['stops'] = [];
  if (mapping.tag === undefined)
    stops.push({ code: 'no-tag-column', message: 'No column is the tag of the joint. Choose it.' });
  const packs = named.packs.filter((pack) => pack.missing === 'pressure').map((pack) => pack.name);
  if (packs.length > 0)
    stops.push({
      code: 'pack-pressure',
      message: `${packs.slice(0, 5).join(', ')}: the file says no test pressure, or more than one. Give the pressure of new packs, or choose existing ones.`,
    });
  if (named.crews.some((crew) => crew.missing === 'company'))
    stops.push({ code: 'crew-company', message: 'Give the company of the crews that are to be created.' });
  if (counts.new + counts.changed === 0)
    stops.push({
      code: 'nothing-to-import',
      message:
        counts.error > 0
          ? 'Every row that would change something is in error.'
          : 'The register is as the file says already.',
    });
  return stops;
}

/**
 * Reads the draft's sheet with these choices and plans every row against the register as it is now. Rows and
 * plan are kept, so that pages come from them and confirming does what was shown. The register is not touched.
 * @throws Problem `file-refused`, `bad-input`
 */
export async function previewImport(
  db: Database,
  siteId: string,
  shutdownId: string,
  importId: string,
  chosen: ImportChoices,
): Promise<ImportPreview> {
  const outside = await loadDraft(db, siteId, shutdownId, importId);
  const sheet = await sheetOfDraft(db, siteId, outside, chosen.sheet);
  const top = sheet.rows.slice(0, TOP_ROWS).map((row) => ({
    rowNumber: row.rowNumber,
    cells: row.cells.map((cell) => plainText(cell).slice(0, 80)),
  }));
  const header = headerOf(sheet.rows, chosen.headerRow) ?? {
    rowNumber: sheet.rows[0]?.rowNumber ?? 1,
    headers: (sheet.rows[0]?.cells ?? []).map(plainText),
    rows: sheet.rows.slice(1),
  };
  return inTransaction(db, async (tx) => {
    const draft = await loadDraft(tx, siteId, shutdownId, importId, 'FOR UPDATE');
    if (draft.preview?.shown.imported)
      throw new Problem('already-exists', 'This file has been imported already. Choose it again to import it again.');
    const samples = header.rows.slice(0, 50).map((row) => row.cells);
    const guessed = guessColumns(header.headers, samples);
    const remembered = await rememberedChoices(tx, siteId, header.headers);
    const width = Math.max(sheet.width, header.headers.length);
    const mapping = chosen.mapping ? checkedMapping(chosen.mapping, width) : (remembered?.mapping ?? guessed.mapping);
    const answers = chosen.options.answers ?? {};
    if (chosen.mapping || Object.keys(answers).length > 0)
      await rememberChoices(tx, siteId, header.headers, { mapping, answers });

    const joints = await knownJoints(tx, siteId, shutdownId);
    const read = await readRows(header.rows, header.headers, mapping, chosen, (tag) => joints.has(comparableTag(tag)));
    const things = await NamedThings.load(tx, siteId, shutdownId, chosen);
    await tx.query('DELETE FROM import_row WHERE site_id = $1 AND import_id = $2', [siteId, importId]);
    const { counts, assigned } = await planAll(tx, siteId, draft, read.rows, joints, things);

    const named = things.named();
    const fieldAt = new Map(Object.entries(mapping).map(([field, column]) => [column, field]));
    const shown: ImportPreview = {
      importId,
      previewId: uuidv7(),
      fileName: draft.fileName,
      choices: { ...chosen, headerRow: header.rowNumber, mapping },
      mappedBy: chosen.mapping ? 'chosen' : remembered ? 'remembered' : 'guessed',
      top,
      columns: Array.from({ length: width }, (_, column) => ({
        column,
        letter: columnLetter(column),
        header: header.headers[column] ?? '',
        field: fieldAt.get(column) ?? null,
        confidence: guessed.columns[column]?.confidence ?? 0,
        samples: samplesOf(header.rows, column),
        understoodAs: understood(read.columns.find((each) => each.column === columnLetter(column))),
      })),
      counts,
      questions: withLastAnswers(read.questions, remembered?.answers ?? {}),
      named,
      existing: things.existing(),
      notes: sheet.notes.slice(0, 100).map((note) => ({ ...note })),
      stops: stopsOf(mapping, counts, named),
      imported: null,
    };
    const stored: StoredPreview = { shown, creations: things.creations(), assigned };
    await storePreview(tx, siteId, draft, shown.choices, stored);
    return shown;
  });
}

function samplesOf(rows: readonly SheetRow[], column: number): string[] {
  const found = new Set<string>();
  for (const row of rows.slice(0, 200)) {
    const text = plainText(row.cells[column] ?? null);
    if (text !== '') found.add(text.slice(0, 60));
    if (found.size === SAMPLES) break;
  }
  return [...found];
}
