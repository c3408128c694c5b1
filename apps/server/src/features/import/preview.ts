import type { ImportChoices, ImportPreview } from '@seatwell/contract';
import {
  type ColumnMapping,
  type ColumnReading,
  columnLetter,
  comparableTag,
  findHeaderRow,
  guessColumns,
  headerRowAt,
  plainText,
  type SheetRow,
} from '@seatwell/workflow';
import { uuidv7 } from 'uuidv7';
import { type Database, inTransaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { checkedMapping, rememberChoices, rememberedChoices, withLastAnswers } from './choice-memory.ts';
import { loadDraft, type StoredPreview, storePreview } from './drafts.ts';
import { NamedThings } from './named-things.ts';
import { knownJoints, planAll } from './plan-all.ts';
import { readRows } from './read-rows.ts';
import { sheetOfDraft } from './sheet-of-draft.ts';

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
 * @param progress told now and then how many of how many rows are done; what it throws ends the reading
 * @throws Problem `file-refused`, `bad-input`
 */
export async function previewImport(
  db: Database,
  siteId: string,
  shutdownId: string,
  importId: string,
  chosen: ImportChoices,
  progress: (done: number, total: number) => Promise<void> = async () => {},
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
    // Half of the work is reading the rows, the other half is planning and keeping them.
    const all = header.rows.length;
    const isKnown = (tag: string) => joints.has(comparableTag(tag));
    const read = await readRows(header.rows, header.headers, mapping, chosen, isKnown, (rows) =>
      progress(Math.floor(rows / 2), all),
    );
    const things = await NamedThings.load(tx, siteId, shutdownId, chosen);
    await tx.query('DELETE FROM import_row WHERE site_id = $1 AND import_id = $2', [siteId, importId]);
    const { counts, assigned } = await planAll({
      tx,
      siteId,
      draft,
      rows: read.rows,
      joints,
      things,
      progress: (rows) => progress(Math.floor((all + rows) / 2), all),
    });

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
