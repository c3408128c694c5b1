import type { ImportChoices, ImportReading } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import type { Database } from '../../platform/database/pool.ts';
import { type JobWork, startJob } from '../../platform/jobs/queue.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import { loadDraft } from './drafts.ts';
import { previewImport } from './preview.ts';

export const READING_JOB = 'read-import';

interface ReadingInput {
  readonly shutdownId: string;
  readonly importId: string;
  readonly choices: ImportChoices;
}

/** Reads a long file behind the answer, with progress. Nothing is kept of a reading that is given up. */
export const readingJob =
  (db: Database): JobWork =>
  async ({ siteId, input, progress }) => {
    const { shutdownId, importId, choices } = input as ReadingInput;
    const { previewId } = await previewImport(db, siteId, shutdownId, importId, choices, progress);
    return { previewId };
  };

/** Starts the reading of a draft with these choices; one that is under way is given up for it. */
export async function startReading(
  db: Database,
  { siteId, accountId }: Actor,
  shutdownId: string,
  importId: string,
  choices: ImportChoices,
): Promise<ImportReading> {
  await loadDraft(db, siteId, shutdownId, importId);
  await giveUpReading(db, siteId, importId);
  const input: ReadingInput = { shutdownId, importId, choices };
  const jobId = await startJob(db, {
    siteId,
    jobId: uuidv7(),
    shutdownId,
    kind: READING_JOB,
    total: 0,
    input,
    startedBy: accountId,
  });
  return { jobId };
}

const UNDER_WAY = `site_id = $1 AND kind = '${READING_JOB}' AND input->>'importId' = $2 AND state IN ('waiting', 'running')`;

/** The reading of this draft that the account waits for; null = none is under way. */
export async function readingUnderWay(
  db: Database,
  { siteId, accountId }: Actor,
  importId: string,
): Promise<string | null> {
  const { rows } = await db.query<{ jobId: string }>(
    `SELECT job_id AS "jobId" FROM job WHERE ${UNDER_WAY} AND started_by = $3 ORDER BY created_at DESC LIMIT 1`,
    [siteId, importId, accountId],
  );
  return rows[0]?.jobId ?? null;
}

/** Takes the job away: the next part that it would count finds it gone, and its transaction ends with nothing kept. */
export async function giveUpReading(db: Database, siteId: string, importId: string): Promise<void> {
  await db.query(`DELETE FROM job WHERE ${UNDER_WAY}`, [siteId, importId]);
}
