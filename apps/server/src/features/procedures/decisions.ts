import type { Payload } from '@seatwell/contract';
import { requireAllowed } from '../../platform/access/allows.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { contentHash } from '../../platform/record/canonical.ts';
import type { DecisionInput, Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';

type ProcedureEvents =
  | 'procedure-drafted'
  | 'procedure-approved'
  | 'procedure-superseded'
  | 'target-table-approved'
  | 'gasket-data-entered'
  | 'lubricant-entered'
  | 'maker-torque-entered';

async function enterSourcedData(
  { tx, actor }: DecisionInput,
  kind: 'gasket-data' | 'lubricant' | 'maker-torque',
  dataId: string,
  name: string,
  content: object,
): Promise<Record<string, never>> {
  requireAllowed(actor, 'enter-engineering-data', {});
  await insertOrRefuse(
    tx,
    'sourced_data',
    {
      site_id: actor.siteId,
      data_id: dataId,
      kind,
      name,
      content: JSON.stringify(content),
      hash: contentHash(content).toString('hex'),
    },
    ['name', 'content', 'hash'],
  );
  return {};
}

/** @throws Problem `bad-input` for limits that contradict each other: the calculation would refuse them for every joint */
function refuseCrossingLimits(data: Payload<'gasket-data-entered'>): void {
  if (data.maximum_MPa >= data.target_MPa && data.target_MPa >= data.operating_MPa) return;
  throw new Problem(
    'bad-input',
    `Operating ${data.operating_MPa}, target ${data.target_MPa} and maximum ${data.maximum_MPa} MPa must not fall in this order. Check the maker's data.`,
    [{ path: 'payload.target_MPa', code: 'limits-cross', message: 'operating ≤ target ≤ maximum' }],
  );
}

/** Procedures, target tables and the entered data that targets stand on. */
export const procedureDecisions: Decisions<ProcedureEvents> = {
  'procedure-drafted': async ({ tx, actor, payload, now }) => {
    requireAllowed(actor, 'draft-procedure', {});
    const { passPercents } = payload.content;
    if (passPercents.at(-1) !== 100 || passPercents.some((percent, i) => percent < (passPercents[i - 1] ?? 0))) {
      throw new Problem('bad-input', `The passes ${passPercents.join(', ')} % must not fall and must end at 100 %.`, [
        { path: 'payload.content.passPercents', code: 'passes-must-rise-to-100', message: 'End with a pass at 100 %.' },
      ]);
    }
    const lubricant = await tx.query('SELECT 1 FROM sourced_data WHERE site_id = $1 AND data_id = $2 AND kind = $3', [
      actor.siteId,
      payload.content.lubricantId,
      'lubricant',
    ]);
    if (lubricant.rowCount === 0)
      throw new Problem('not-found', 'Enter the lubricant, with its nut factor and source, first.');
    const sameCode = await tx.query(
      'SELECT 1 FROM procedure_revision WHERE site_id = $1 AND code = $2 AND revision = $3 AND procedure_id <> $4',
      [actor.siteId, payload.code, payload.revision, payload.procedureId],
    );
    if (sameCode.rowCount) {
      throw new Problem(
        'already-exists',
        `Another procedure is ${payload.code} revision ${payload.revision} already. Choose another code.`,
      );
    }
    const { rowCount } = await tx.query(
      `INSERT INTO procedure_revision (site_id, procedure_id, revision, code, title, content, content_hash, drafted_at)
       VALUES ($1, $2, $3, $4, $5, $6, $7, $8)
       ON CONFLICT (site_id, procedure_id, revision) DO UPDATE
         SET code = excluded.code, title = excluded.title, content = excluded.content,
           content_hash = excluded.content_hash, drafted_at = excluded.drafted_at
         WHERE procedure_revision.approved_at IS NULL`,
      [
        actor.siteId,
        payload.procedureId,
        payload.revision,
        payload.code,
        payload.title,
        JSON.stringify(payload.content),
        contentHash(payload.content).toString('hex'),
        now,
      ],
    );
    if (rowCount === 0) {
      throw new Problem(
        'stale-decision',
        `Revision ${payload.revision} of ${payload.code} is approved and is never edited. Draft the next revision.`,
      );
    }
    return { version: payload.revision };
  },

  'procedure-approved': async ({ tx, actor, payload, subjectId, now }) => {
    requireAllowed(actor, 'approve-procedure', {});
    const { rowCount } = await tx.query(
      `UPDATE procedure_revision SET approved_at = $4, approved_by = $5
       WHERE site_id = $1 AND procedure_id = $2 AND revision = $3 AND approved_at IS NULL`,
      [actor.siteId, subjectId, payload.revision, now, actor.personId],
    );
    if (rowCount === 0)
      throw new Problem('stale-decision', 'There is no such draft: it is approved already, or was never written.');
    return {};
  },

  'procedure-superseded': async ({ tx, actor, payload, subjectId, now }) => {
    requireAllowed(actor, 'approve-procedure', {});
    const { rowCount } = await tx.query(
      `UPDATE procedure_revision SET superseded_at = $4
       WHERE site_id = $1 AND procedure_id = $2 AND revision = $3 AND approved_at IS NOT NULL AND superseded_at IS NULL`,
      [actor.siteId, subjectId, payload.revision, now],
    );
    if (rowCount === 0)
      throw new Problem('stale-decision', 'Only an approved revision that is in use can be superseded.');
    return {};
  },

  'target-table-approved': async ({ tx, actor, payload, now }) => {
    // A table covers joints of every area: only an engineer of the whole site approves one.
    requireAllowed(actor, 'approve-procedure', {});
    const known = await tx.query(
      `SELECT 1 FROM procedure_revision WHERE site_id = $1 AND procedure_id = $2 AND revision = $3 AND approved_at IS NOT NULL`,
      [actor.siteId, payload.procedureId, payload.procedureRevision],
    );
    if (known.rowCount === 0)
      throw new Problem('not-found', 'A table stands on an approved procedure revision; this one is not.');
    await insertOrRefuse(tx, 'target_table', {
      site_id: actor.siteId,
      table_id: payload.tableId,
      name: payload.name,
      content: JSON.stringify(payload),
      approved_at: now,
      approved_by: actor.personId,
    });
    return {};
  },

  'gasket-data-entered': (input) => {
    refuseCrossingLimits(input.payload);
    return enterSourcedData(input, 'gasket-data', input.payload.gasketDataId, input.payload.name, input.payload);
  },
  'lubricant-entered': (input) =>
    enterSourcedData(input, 'lubricant', input.payload.lubricantId, input.payload.name, input.payload),
  'maker-torque-entered': (input) =>
    enterSourcedData(input, 'maker-torque', input.payload.makerTorqueId, input.payload.item, input.payload),
};
