import { createHash } from 'node:crypto';
import type { ImportConfirmation, ImportStarted } from '@seatwell/contract';
import { requireAllowed } from '../../platform/access/allows.ts';
import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { startJob } from '../../platform/jobs/queue.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import { commandHash, earlierAnswer, type RecordingParts } from '../recording/record-command.ts';
import { type Draft, loadDraft, type StoredPreview } from './drafts.ts';
import { refuseStaleImport } from './stale.ts';

export const IMPORT_JOB = 'import-register';

/** What the job is handed. */
export interface ImportJobInput {
  readonly accountId: string;
  readonly shutdownId: string;
  readonly importId: string;
  readonly confirmation: ImportConfirmation;
  readonly hash: string;
}

/**
 * An id that follows from the confirmation's: the job comes at least once, and a repeat must find what the first
 * one recorded. It keeps the time of the confirmation's id.
 */
export function derivedId(eventId: string, purpose: string): string {
  const hash = createHash('sha256').update(`${eventId} ${purpose}`).digest('hex');
  const time = eventId.replaceAll('-', '').slice(0, 12);
  const variant = '89ab'[Number.parseInt(hash.slice(3, 4), 16) % 4];
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hash.slice(0, 3)}-${variant}${hash.slice(4, 7)}-${hash.slice(7, 19)}`;
}

/** The preview that is confirmed. @throws Problem `stale-decision` when the draft has another preview by now */
export function confirmedPreview(draft: Draft, { previewId }: ImportConfirmation): StoredPreview {
  const { preview } = draft;
  if (!preview) throw new Problem('bad-input', 'Look at the preview before you confirm.');
  if (preview.shown.previewId !== previewId) {
    throw new Problem(
      'stale-decision',
      'The choices of this import were changed since the preview that you saw. Look at the preview again.',
    );
  }
  return preview;
}

/** @throws Problem `file-refused` naming the rows, `bad-input` with what is still to be answered */
export function refuseUnready({ shown }: StoredPreview, { leaveOutRowsInError }: ImportConfirmation): void {
  if (shown.stops.length > 0) {
    throw new Problem(
      'bad-input',
      shown.stops.map((stop) => stop.message).join(' '),
      shown.stops.map((stop) => ({ path: 'choices', ...stop })),
    );
  }
  if (shown.counts.error > 0 && !leaveOutRowsInError) {
    throw new Problem(
      'file-refused',
      `${shown.counts.error} of ${shown.counts.rows} rows are in error. Correct them in the sheet, or say that they are to be left out. Nothing was recorded.`,
      [{ path: 'leaveOutRowsInError', code: 'rows-in-error', message: 'Rows are in error.', limit: 0 }],
    );
  }
}

/** @throws Problem `not-allowed`: what the file creates needs its own entitlement */
export function requireImportAllowed(actor: Actor, shutdownId: string, preview: StoredPreview): void {
  const target = { shutdownId };
  requireAllowed(actor, 'import-register', target);
  const { areas, systems, crews, packs } = preview.creations;
  if (areas.length + systems.length + crews.length > 0) requireAllowed(actor, 'plan-shutdown', target);
  if (packs.length > 0) requireAllowed(actor, 'plan-packs', target);
  if (preview.assigned > 0) requireAllowed(actor, 'plan-makes', target);
}

async function refuseOtherJob(db: Database, siteId: string, jobId: string, hash: string): Promise<void> {
  const { rows } = await db.query<{ hash: string }>(
    `SELECT input->>'hash' AS hash FROM job WHERE site_id = $1 AND job_id = $2`,
    [siteId, jobId],
  );
  if (rows[0] && rows[0].hash !== hash) {
    throw new Problem(
      'event-id-reused',
      'This event id confirmed something else. Make a new id for each confirmation.',
    );
  }
}

/**
 * Starts the import that the person saw. The same confirmation again answers the same job.
 * @throws Problem when it is stale, not ready, or not allowed
 */
export async function startImport(
  { db }: RecordingParts,
  actor: Actor,
  shutdownId: string,
  importId: string,
  confirmation: ImportConfirmation,
): Promise<ImportStarted> {
  const { siteId, accountId } = actor;
  const { eventId } = confirmation;
  const hash = commandHash(actor, { shutdownId }, IMPORT_JOB, { importId, ...confirmation });
  const jobId = derivedId(eventId, 'job');
  const started = { jobId, eventId };
  await refuseOtherJob(db, siteId, jobId, hash.toString('hex'));
  if (await earlierAnswer(db, siteId, eventId, hash)) return started;
  const draft = await loadDraft(db, siteId, shutdownId, importId);
  const preview = confirmedPreview(draft, confirmation);
  requireImportAllowed(actor, shutdownId, preview);
  refuseUnready(preview, confirmation);
  await refuseStaleImport(db, siteId, shutdownId, importId);
  const input: ImportJobInput = { accountId, shutdownId, importId, confirmation, hash: hash.toString('hex') };
  const { counts } = preview.shown;
  await startJob(db, {
    siteId,
    jobId,
    shutdownId,
    kind: IMPORT_JOB,
    total: counts.new + counts.changed,
    input,
    startedBy: accountId,
  });
  return started;
}
