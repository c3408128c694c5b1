import type { BatchType, Import } from './import-run.ts';
import type { RowPlan } from './plan-row.ts';
import { yieldToOthers } from './slices.ts';

export interface PlanRow {
  readonly row_number: number;
  readonly joint_id: string;
  readonly version: number | null;
  readonly plan: RowPlan;
}

/** Rows that are folded and written at once: others get their turn after each. */
const AT_ONCE = 200;

/** The next rows of a part of the plan: new joints as the sheet has them, changed ones by id, as every lock goes. */
export async function* planned(run: Import, outcome: 'new' | 'changed'): AsyncGenerator<readonly PlanRow[]> {
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

/** Rows in error that were left out on purpose: the record says which. */
export async function rowsLeftOut({ tx, actor, draft }: Import): Promise<number[]> {
  const { rows } = await tx.query<{ row_number: number }>(
    `SELECT row_number FROM import_row WHERE site_id = $1 AND import_id = $2 AND outcome = 'error' ORDER BY row_number`,
    [actor.siteId, draft.importId],
  );
  return rows.map((row) => row.row_number);
}

/** The batch that carries the confirmation's id: the first that will have rows. */
export async function firstBatch({ tx, actor, draft }: Import): Promise<BatchType> {
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
