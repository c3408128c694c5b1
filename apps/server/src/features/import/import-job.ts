import type { ImportAnswer } from '@seatwell/contract';
import { inTransaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import type { JobWork } from '../../platform/jobs/queue.ts';
import { loadActor } from '../../platform/sign-in/sessions.ts';
import { earlierAnswer, type RecordingParts } from '../recording/record-command.ts';
import { loadShutdown } from '../shutdowns/load-shutdown.ts';
import { confirmedPreview, type ImportJobInput, refuseUnready, requireImportAllowed } from './confirm.ts';
import { loadDraft } from './drafts.ts';
import { recordImport } from './record-import.ts';
import { refuseStaleImport } from './stale.ts';

/**
 * Records a confirmed import, all or nothing. What was judged at the confirmation is judged again here, under the
 * draft's lock: time may have passed in the queue. A repeat of the job finds the first answer.
 */
export const importJob =
  (parts: RecordingParts): JobWork =>
  async ({ siteId, input, progress }) => {
    const { accountId, shutdownId, importId, confirmation, hash } = input as ImportJobInput;
    const actor = await loadActor(parts.db, siteId, accountId);
    if (!actor) throw new Problem('not-signed-in', 'The account that started this was closed.');
    const bound = Buffer.from(hash, 'hex');
    const earlier = await earlierAnswer<ImportAnswer>(parts.db, siteId, confirmation.eventId, bound);
    if (earlier) return earlier;
    return inTransaction(parts.db, async (tx) => {
      const draft = await loadDraft(tx, siteId, shutdownId, importId, 'FOR UPDATE');
      const preview = confirmedPreview(draft, confirmation);
      requireImportAllowed(actor, shutdownId, preview);
      refuseUnready(preview, confirmation);
      await refuseStaleImport(tx, siteId, shutdownId, importId);
      const shutdown = await loadShutdown(tx, siteId, shutdownId);
      const now = parts.clock().toISOString();
      return recordImport({ tx, actor, shutdown, draft, preview, confirmation, hash: bound, now, progress });
    });
  };
