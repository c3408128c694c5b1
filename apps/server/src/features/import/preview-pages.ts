import type { ImportOutcome, ImportProblemsPage, ImportRow, ImportRowsPage } from '@seatwell/contract';
import type { Database } from '../../platform/database/pool.ts';
import { loadDraft } from './drafts.ts';

const PAGE = 100;

interface RowColumns extends Pick<ImportRow, 'rowNumber' | 'tag' | 'outcome' | 'jointId'> {
  readonly shown: Omit<ImportRow, 'rowNumber' | 'tag' | 'outcome' | 'jointId'>;
}

async function page(
  db: Database,
  siteId: string,
  importId: string,
  where: string,
  after: number,
  outcome: string | null,
): Promise<RowColumns[]> {
  const { rows } = await db.query<RowColumns>(
    `SELECT row_number AS "rowNumber", tag, outcome, joint_id AS "jointId", shown FROM import_row
     WHERE site_id = $1 AND import_id = $2 AND row_number > $3 AND ($4::text IS NULL OR outcome = $4) AND ${where}
     ORDER BY row_number LIMIT ${PAGE + 1}`,
    [siteId, importId, after, outcome],
  );
  return rows;
}

const nextOf = (rows: readonly RowColumns[]): string | null =>
  rows.length > PAGE ? String(rows[PAGE - 1]?.rowNumber) : null;

/** Rows of a preview by what confirming would do with them, in the order of the sheet. */
export async function previewRows(
  db: Database,
  siteId: string,
  shutdownId: string,
  importId: string,
  query: { readonly kind: ImportOutcome | null; readonly cursor: number },
): Promise<ImportRowsPage> {
  await loadDraft(db, siteId, shutdownId, importId);
  const rows = await page(db, siteId, importId, 'true', query.cursor, query.kind);
  return {
    rows: rows.slice(0, PAGE).map(({ shown, outcome, jointId, ...row }) => ({
      ...row,
      ...shown,
      outcome,
      // The id that a new joint would get is nobody's business yet.
      jointId: outcome === 'new' ? null : jointId,
    })),
    next: nextOf(rows),
  };
}

/** Every cell that is wrong or deserves a look, row by row. */
export async function previewProblems(
  db: Database,
  siteId: string,
  shutdownId: string,
  importId: string,
  query: { readonly cursor: number },
): Promise<ImportProblemsPage> {
  await loadDraft(db, siteId, shutdownId, importId);
  const rows = await page(db, siteId, importId, 'problems > 0', query.cursor, null);
  return { rows: rows.slice(0, PAGE).flatMap((row) => row.shown.problems), next: nextOf(rows) };
}
