import { type CountsByStage, STAGES } from '@seatwell/contract';
import type { Reading } from '../reading/reading.ts';
import { noCounts } from '../reading/stage-counts.ts';

/** How many joints of a pack are so, and the first of them by tag with who works on it. */
export interface Some {
  readonly count: number;
  readonly tag: string | null;
  readonly crewId: string | null;
  readonly by: string | null;
}

/** What the joints and items of a pack come to, for its stoppers. */
export interface PackCounts {
  readonly total: number;
  readonly tested: number;
  readonly stages: CountsByStage;
  readonly notTight: Some;
  readonly relaxationDue: Some;
  readonly notChecked: Some;
  readonly rejected: Some;
  readonly leaking: Some;
  readonly provisional: Some;
  readonly notProven: Some;
  readonly unclosedA: { readonly count: number; readonly text: string | null };
}

const TIGHT = STAGES.indexOf('tight');
const CHECKED = STAGES.indexOf('checked');
const PROVEN = STAGES.indexOf('proven');

// Joints that are reinstated after the test do not stop it; a joint that is only tested is never tightened.
const WORKED = "m.role <> 'reinstated' AND m.work_scope <> 'test-only'";

const CONDITIONS: Readonly<Record<string, string>> = {
  notTight: `${WORKED} AND m.stage_rank < ${TIGHT}`,
  relaxationDue: 'm.relaxation_due_at IS NOT NULL',
  notChecked: `${WORKED} AND m.stage_rank = ${TIGHT} AND NOT m.check_rejected AND NOT 'leaking' = ANY(m.flags)`,
  rejected: `${WORKED} AND m.check_rejected`,
  leaking: "m.role <> 'reinstated' AND 'leaking' = ANY(m.flags)",
  provisional: `'provisional-tool' = ANY(m.flags) AND EXISTS (SELECT FROM calibration c WHERE c.site_id = $1
    AND c.provisional AND c.cleared_at IS NULL AND c.tool_id = ANY(m.tools_used))`,
  notProven: `m.role <> 'reinstated' AND m.stage_rank < ${PROVEN}`,
};

const some = (
  name: string,
  condition: string,
): string => `jsonb_build_object('count', count(*) FILTER (WHERE ${condition}))
  || coalesce((array_agg(jsonb_build_object('tag', m.tag, 'crewId', m.crew_id, 'by', m.by) ORDER BY m.tag_key)
    FILTER (WHERE ${condition}))[1], '{"tag": null, "crewId": null, "by": null}') AS "${name}"`;

export const stageRankOf = { tight: TIGHT, checked: CHECKED, proven: PROVEN } as const;

/** The counts of one pack, or of every pack of the shutdown, by pack id. */
export async function packCounts(reading: Reading, packId: string | null): Promise<Map<string, PackCounts>> {
  const values = [reading.siteId, reading.shutdownId, packId];
  const members = `SELECT mp.pack_id, mp.role, mk.make_id, mk.joint_id, mk.stage, mk.stage_rank, mk.work_scope, mk.crew_id,
      mk.relaxation_due_at, mk.check_rejected, mk.tools_used, j.tag, j.tag_key, j.flags, j.waits_for_data->>'by' AS by
    FROM make_pack mp
    JOIN make mk ON mk.site_id = mp.site_id AND mk.shutdown_id = mp.shutdown_id AND mk.make_id = mp.make_id AND NOT mk.cancelled
    JOIN joint j ON j.site_id = mk.site_id AND j.shutdown_id = mk.shutdown_id AND j.joint_id = mk.joint_id AND j.voided IS NULL
    WHERE mp.site_id = $1 AND mp.shutdown_id = $2 AND ($3::uuid IS NULL OR mp.pack_id = $3)`;
  const [counts, stages, punch] = await Promise.all([
    reading.db.query<{ packId: string } & Omit<PackCounts, 'stages' | 'unclosedA'>>({
      name: 'pack-counts',
      text: `WITH m AS (${members}) SELECT m.pack_id AS "packId", count(*) AS total,
          count(*) FILTER (WHERE m.role <> 'reinstated') AS tested,
          ${Object.entries(CONDITIONS)
            .map(([name, condition]) => some(name, condition))
            .join(',\n          ')}
        FROM m GROUP BY m.pack_id`,
      values,
    }),
    reading.db.query<{ packId: string; stage: keyof CountsByStage; count: number }>({
      name: 'pack-stages',
      text: `WITH m AS (${members}) SELECT pack_id AS "packId", stage, count(*) AS count FROM m GROUP BY pack_id, stage`,
      values,
    }),
    reading.db.query<{ packId: string; count: number; text: string }>({
      name: 'pack-unclosed-a',
      text: `SELECT pack_id AS "packId", count(*) AS count, (array_agg(text ORDER BY raised_at))[1] AS text
        FROM (SELECT p.pack_id, p.punch_id, p.text, p.raised_at FROM punch_item p
            WHERE p.site_id = $1 AND p.shutdown_id = $2 AND p.category = 'A' AND p.closed_at IS NULL AND p.pack_id IS NOT NULL
          UNION
          SELECT mp.pack_id, p.punch_id, p.text, p.raised_at FROM punch_item p
            JOIN make_pack mp ON mp.site_id = p.site_id AND mp.shutdown_id = p.shutdown_id AND mp.joint_id = p.joint_id
              AND mp.role <> 'reinstated'
            WHERE p.site_id = $1 AND p.shutdown_id = $2 AND p.category = 'A' AND p.closed_at IS NULL) items
        WHERE $3::uuid IS NULL OR pack_id = $3 GROUP BY pack_id`,
      values,
    }),
  ]);
  const byStage = new Map<string, CountsByStage>();
  for (const row of stages.rows) {
    const known = byStage.get(row.packId) ?? noCounts();
    known[row.stage] = row.count;
    byStage.set(row.packId, known);
  }
  const unclosed = new Map(punch.rows.map((row) => [row.packId, { count: row.count, text: row.text }]));
  const packs = new Map<string, PackCounts>();
  for (const { packId: id, ...row } of counts.rows) {
    packs.set(id, {
      ...row,
      stages: byStage.get(id) ?? noCounts(),
      unclosedA: unclosed.get(id) ?? { count: 0, text: null },
    });
  }
  for (const [id, unclosedA] of unclosed) if (!packs.has(id)) packs.set(id, { ...emptyPack(), unclosedA });
  return packs;
}

const none: Some = { count: 0, tag: null, crewId: null, by: null };

/** A pack without joints. */
export const emptyPack = (): PackCounts => ({
  total: 0,
  tested: 0,
  stages: noCounts(),
  notTight: none,
  relaxationDue: none,
  notChecked: none,
  rejected: none,
  leaking: none,
  provisional: none,
  notProven: none,
  unclosedA: { count: 0, text: null },
});
