import type { EventType, ImportAnswer } from '@seatwell/contract';
import { CATALOGUE, eventKind } from '@seatwell/workflow';
import { appendStaged } from '../../platform/record/append.ts';
import { type StagedRows, stageRows } from '../../platform/record/stage-rows.ts';
import type { RollupDelta } from '../recording/decision.ts';
import { applyRollup } from '../recording/rollup.ts';
import { changeJoints } from './change-planned.ts';
import { derivedId } from './confirm.ts';
import { createNamed } from './create-named.ts';
import { noteImported } from './drafts.ts';
import { BATCHES, type BatchType, counter, type Import, type Stages } from './import-run.ts';
import { listJoints } from './list-planned.ts';
import { firstBatch, rowsLeftOut } from './planned-rows.ts';

/**
 * Writes the whole import in the caller's transaction: projections and the rows of the batches part by part, then
 * the events, for which alone the stream's head is locked. The first batch carries the confirmation's own id.
 */
export async function recordImport(run: Import): Promise<ImportAnswer> {
  const { tx, actor, shutdown, draft, preview, confirmation, now } = run;
  const { siteId } = actor;
  const streamId = shutdown.shutdownId;
  const created = await createNamed(run);
  const first = await firstBatch(run);
  const stages = Object.fromEntries(
    BATCHES.map((type) => {
      const eventId = type === first ? confirmation.eventId : derivedId(confirmation.eventId, type);
      return [type, { eventId, rows: stageRows(tx, { siteId, streamId, eventId }) }];
    }),
  ) as unknown as Stages;
  const rollup: RollupDelta[] = [];
  const done = counter(run);
  await listJoints(run, stages, rollup, done);
  await changeJoints(run, stages, rollup, done);

  const leftOut = await rowsLeftOut(run);
  const staged = Object.fromEntries(BATCHES.map((type) => [type, stages[type].rows.staged()])) as Record<
    BatchType,
    StagedRows
  >;
  const answer: ImportAnswer = {
    eventId: confirmation.eventId,
    recordedAt: now,
    listed: staged['joint-listed'].count,
    specified: staged['joint-specified'].count,
    assigned: staged['make-assigned'].count,
    leftOut: leftOut.length,
    created: {
      areas: preview.creations.areas.length,
      systems: preview.creations.systems.length,
      crews: preview.creations.crews.length,
      packs: preview.creations.packs.length,
    },
  };
  await noteImported(tx, siteId, draft.importId, answer);
  const { sheet, headerRow } = preview.shown.choices;
  const source = { importId: draft.importId, fileName: draft.fileName, fileHash: draft.fileHash, sheet, headerRow };
  const append = (type: EventType, eventId: string, subjectId: string, payload: unknown, rows: StagedRows) =>
    appendStaged(
      tx,
      {
        siteId,
        streamId,
        eventId,
        type,
        v: CATALOGUE[type].currentVersion,
        kind: eventKind(type, payload),
        subjectId,
        jointId: null,
        makeId: null,
        accountId: actor.accountId,
        personId: actor.personId,
        performedBy: [actor.personId],
        device: confirmation.device,
        deviceTime: confirmation.deviceTime,
        workTime: now,
        recordedAt: now,
        payload,
        evidence: {},
        signature: null,
        reviewCodes: [],
        amends: null,
        commandHash: run.hash,
        answer: () => answer,
      },
      rows,
    );
  const none: StagedRows = { count: 0, root: null };
  for (const { type, id, payload } of created) {
    await append(type, derivedId(confirmation.eventId, id), id, payload, none);
  }
  for (const type of BATCHES) {
    const rows = staged[type];
    if (rows.count === 0) continue;
    const payload = { rows: rows.count, source, leftOutRowsInError: leftOut };
    await append(type, stages[type].eventId, streamId, payload, rows);
  }
  await applyRollup(tx, siteId, streamId, rollup);
  return answer;
}
