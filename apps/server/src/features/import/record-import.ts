import type { EventType, ImportAnswer, ImportConfirmation, Payload } from '@seatwell/contract';
import { CATALOGUE, eventKind, foldJoint, type JointState, type RecordedEvent } from '@seatwell/workflow';
import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { appendStaged, type RowToAppend, type StagedRows, stageRows } from '../../platform/record/append.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import { lockJoints } from '../joints/joint-store.ts';
import { type JointChange, projectJoints } from '../joints/project-joints.ts';
import type { DecisionInput, RollupDelta } from '../recording/decision.ts';
import { decisionFor } from '../recording/registry.ts';
import { applyRollup } from '../recording/rollup.ts';
import type { ShutdownRow } from '../shutdowns/load-shutdown.ts';
import { derivedId } from './confirm.ts';
import { type Draft, noteImported, type StoredPreview } from './drafts.ts';
import type { RowPlan } from './plan-row.ts';
import { yieldToOthers } from './slices.ts';

interface Import {
  readonly tx: Transaction;
  readonly actor: Actor;
  readonly shutdown: ShutdownRow;
  readonly draft: Draft;
  readonly preview: StoredPreview;
  readonly confirmation: ImportConfirmation;
  readonly hash: Buffer;
  readonly now: string;
  readonly progress: (done: number, total?: number) => Promise<void>;
}

interface PlanRow {
  readonly row_number: number;
  readonly joint_id: string;
  readonly version: number | null;
  readonly plan: RowPlan;
}

/** Rows that are folded and written at once: others get their turn after each. */
const AT_ONCE = 200;
const BATCHES = ['joint-listed', 'joint-specified', 'make-assigned'] as const;
type BatchType = (typeof BATCHES)[number];
type Stages = Readonly<Record<BatchType, { readonly eventId: string; readonly rows: ReturnType<typeof stageRows> }>>;

const CREATED = {
  areas: ['area-listed', 'areaId'],
  systems: ['system-listed', 'systemId'],
  crews: ['crew-listed', 'crewId'],
  packs: ['pack-planned', 'packId'],
} as const;

function eventOf(
  { actor, now }: Import,
  type: BatchType,
  eventId: string,
  jointId: string,
  makeId: string | null,
  payload: unknown,
): RecordedEvent {
  return {
    eventId,
    type,
    v: CATALOGUE[type].currentVersion,
    sequence: Number.MAX_SAFE_INTEGER,
    jointId,
    makeId,
    payload,
    evidence: {},
    accountId: actor.accountId,
    recordedByPersonId: actor.personId,
    performedBy: [actor.personId],
    workTime: now,
    recordedAt: now,
    signed: false,
    reviewCodes: [],
  };
}

/** Areas, systems, crews and packs first; their events are appended at the end, under the stream's head. */
async function createNamed(run: Import): Promise<{ type: EventType; id: string; payload: unknown }[]> {
  const created: { type: EventType; id: string; payload: unknown }[] = [];
  for (const [kind, [type, idName]] of Object.entries(CREATED) as [
    keyof typeof CREATED,
    readonly [EventType, string],
  ][])
    for (const payload of run.preview.creations[kind]) {
      const id = (payload as unknown as Record<string, string>)[idName] as string;
      await decisionFor(type)({
        tx: run.tx,
        type,
        payload: payload as Payload<EventType>,
        eventId: derivedId(run.confirmation.eventId, id),
        subjectId: id,
        makeId: null,
        actor: run.actor,
        now: run.now,
        workTime: run.now,
        doubtfulTime: false,
        performedBy: [run.actor.personId],
        versionSeen: null,
        alreadyDone: false,
        signed: false,
        shutdown: run.shutdown,
      } satisfies DecisionInput);
      created.push({ type, id, payload });
    }
  return created;
}

/** The next rows of a part of the plan: new joints as the sheet has them, changed ones by id, as every lock goes. */
async function* planned(run: Import, outcome: 'new' | 'changed'): AsyncGenerator<readonly PlanRow[]> {
  const [column, cast, first] =
    outcome === 'new' ? ['row_number', 'int', '0'] : ['joint_id', 'uuid', '00000000-0000-0000-0000-000000000000'];
  let after: string | number = first as string;
  for (;;) {
    const { rows }: { rows: PlanRow[] } = await run.tx.query<PlanRow>({
      name: `import-plan-${outcome}`,
      text: `SELECT row_number, joint_id, version, plan FROM import_row
             WHERE site_id = $1 AND import_id = $2 AND outcome = '${outcome}' AND ${column} > $3::${cast}
             ORDER BY ${column} LIMIT ${AT_ONCE}`,
      values: [run.actor.siteId, run.draft.importId, after],
    });
    const last = rows.at(-1);
    if (!last) return;
    yield rows;
    await yieldToOthers();
    after = outcome === 'new' ? last.row_number : last.joint_id;
  }
}

const rowOf = (jointId: string, makeId: string | null, payload: unknown): RowToAppend => ({
  jointId,
  makeId,
  payload,
  evidence: {},
});

async function listJoints(run: Import, stages: Stages, rollup: RollupDelta[], done: Counter): Promise<void> {
  const { tx, shutdown, actor } = run;
  const { eventId, rows: stage } = stages['joint-listed'];
  for await (const rows of planned(run, 'new')) {
    const listed = rows.map((row) => ({ jointId: row.joint_id, payload: row.plan.listed as Payload<'joint-listed'> }));
    await tx.query({
      name: 'import-joint-places',
      text: `INSERT INTO joint_place (site_id, place_id, tag)
       SELECT $1, p.place_id, p.tag FROM unnest($2::uuid[], $3::text[]) AS p (place_id, tag)
       ON CONFLICT (site_id, place_id) DO UPDATE SET tag = excluded.tag`,
      values: [actor.siteId, listed.map(({ payload }) => payload.placeId), listed.map(({ payload }) => payload.tag)],
    });
    const changes = listed.map(
      ({ jointId, payload }): JointChange => ({
        before: null,
        after: foldJoint(null, eventOf(run, 'joint-listed', eventId, jointId, null, payload)),
      }),
    );
    rollup.push(...(await projectJoints(tx, shutdown, changes, run.now)));
    await stage.add(listed.map(({ jointId, payload }) => rowOf(jointId, null, payload)));
    await done(rows.length);
  }
}

async function changeJoints(run: Import, stages: Stages, rollup: RollupDelta[], done: Counter): Promise<void> {
  const { tx, shutdown, actor } = run;
  for await (const rows of planned(run, 'changed')) {
    const joints = await lockJoints(
      tx,
      actor.siteId,
      shutdown.shutdownId,
      rows.map((row) => row.joint_id),
    );
    const changes: JointChange[] = [];
    const specified: RowToAppend[] = [];
    const assigned: RowToAppend[] = [];
    for (const { joint_id: jointId, version, plan } of rows) {
      const before = joints.get(jointId) as JointState;
      // Seen under the lock: what was recorded after the check at the start is not overwritten either.
      if (before.version !== version) {
        throw new Problem(
          'stale-decision',
          `${before.tag} changed while the import ran. Nothing was recorded. Look at the preview again.`,
          [{ path: before.tag, code: 'changed-since', message: before.tag, joint: before.tag }],
        );
      }
      let after = before;
      if (plan.specified) {
        const { eventId } = stages['joint-specified'];
        after = foldJoint(after, eventOf(run, 'joint-specified', eventId, jointId, null, plan.specified));
        specified.push(rowOf(jointId, null, plan.specified));
      }
      if (plan.assigned && plan.makeId) {
        const { eventId } = stages['make-assigned'];
        after = foldJoint(after, eventOf(run, 'make-assigned', eventId, jointId, plan.makeId, plan.assigned));
        assigned.push(rowOf(jointId, plan.makeId, plan.assigned));
      }
      changes.push({ before, after });
    }
    rollup.push(...(await projectJoints(tx, shutdown, changes, run.now)));
    await stages['joint-specified'].rows.add(specified);
    await stages['make-assigned'].rows.add(assigned);
    await done(rows.length);
  }
}

type Counter = (rows: number) => Promise<void>;

function counter({ progress }: Import): Counter {
  let done = 0;
  let told = 0;
  return async (rows) => {
    done += rows;
    if (done - told < 1000) return;
    told = done;
    await progress(done);
  };
}

/** Rows in error that were left out on purpose: the record says which. */
async function rowsLeftOut({ tx, actor, draft }: Import): Promise<number[]> {
  const { rows } = await tx.query<{ row_number: number }>(
    `SELECT row_number FROM import_row WHERE site_id = $1 AND import_id = $2 AND outcome = 'error' ORDER BY row_number`,
    [actor.siteId, draft.importId],
  );
  return rows.map((row) => row.row_number);
}

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

/** The batch that carries the confirmation's id: the first that will have rows. */
async function firstBatch({ tx, actor, draft }: Import): Promise<BatchType> {
  const { rows } = await tx.query<{ listed: boolean; specified: boolean }>(
    `SELECT coalesce(bool_or(outcome = 'new'), false) AS listed,
       coalesce(bool_or(outcome = 'changed' AND plan ? 'specified'), false) AS specified
     FROM import_row WHERE site_id = $1 AND import_id = $2`,
    [actor.siteId, draft.importId],
  );
  const found = rows[0];
  if (found?.listed) return 'joint-listed';
  return found?.specified ? 'joint-specified' : 'make-assigned';
}
