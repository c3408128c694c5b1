import { createHash } from 'node:crypto';
import type { ImportChoices, ImportQuestion } from '@seatwell/contract';
import { type ColumnMapping, REGISTER_FIELDS } from '@seatwell/workflow';
import type { Database, Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

const headersHash = (headers: readonly string[]): string =>
  createHash('sha256')
    .update(JSON.stringify(headers.map((header) => header.trim().toLowerCase())))
    .digest('hex');

type Answers = NonNullable<ImportChoices['options']['answers']>;

export interface RememberedChoices {
  readonly mapping: ColumnMapping;
  readonly answers: Answers;
}

/** The columns that were chosen, and the answers given, the last time a sheet had these headers. */
export async function rememberedChoices(
  db: Database | Transaction,
  siteId: string,
  headers: readonly string[],
): Promise<RememberedChoices | null> {
  const { rows } = await db.query<RememberedChoices>(
    'SELECT mapping, answers FROM import_mapping WHERE site_id = $1 AND headers_hash = $2',
    [siteId, headersHash(headers)],
  );
  return rows[0] ?? null;
}

/** An answer for one row is left out: in the next file that row is another joint. */
const forLikeRows = (answers: Answers): Answers =>
  Object.fromEntries(Object.entries(answers).filter(([key]) => !key.startsWith('row.')));

/** Keeps the columns in place of those before, and the answers beside those to other questions. */
export async function rememberChoices(
  tx: Transaction,
  siteId: string,
  headers: readonly string[],
  { mapping, answers }: RememberedChoices,
): Promise<void> {
  await tx.query(
    `INSERT INTO import_mapping (site_id, headers_hash, mapping, answers, used_at) VALUES ($1, $2, $3, $4, now())
     ON CONFLICT (site_id, headers_hash) DO UPDATE SET mapping = excluded.mapping,
       answers = import_mapping.answers || excluded.answers, used_at = excluded.used_at`,
    [siteId, headersHash(headers), JSON.stringify(mapping), JSON.stringify(forLikeRows(answers))],
  );
}

/**
 * The questions with the answer that each got the last time. It is offered, not applied: rows wait until a person
 * has taken it over for this file. One that is no longer among the choices is not offered.
 */
export const withLastAnswers = (questions: readonly ImportQuestion[], answers: Answers): ImportQuestion[] =>
  questions.map((question) => {
    const last = question.choices.find((choice) => choice.value === answers[question.key]);
    return last ? { ...question, lastAnswer: last.value } : question;
  });

/** @throws Problem `bad-input` for fields that no register has, and for two fields in one column */
export function checkedMapping(mapping: Readonly<Record<string, number>>, width: number): ColumnMapping {
  const known: ReadonlySet<string> = new Set(REGISTER_FIELDS);
  const columns = new Map<number, string>();
  for (const [field, column] of Object.entries(mapping)) {
    if (!known.has(field)) throw new Problem('bad-input', `“${field}” is no field of a register.`);
    if (column >= width) throw new Problem('bad-input', `The sheet has ${width} columns, “${field}” points beyond.`);
    const other = columns.get(column);
    if (other) throw new Problem('bad-input', `One column cannot be both “${other}” and “${field}”. Choose one.`);
    columns.set(column, field);
  }
  return mapping as ColumnMapping;
}
