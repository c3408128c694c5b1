import type { MakeAnswer, Payload } from '@seatwell/contract';
import type { JointState } from '@seatwell/workflow';
import type { Reading } from '../reading/reading.ts';

type AssignedProcedure = NonNullable<MakeAnswer['procedure']>;

/** The assigned procedure revisions of a joint's makes, with their lubricant, by "id revision". */
export async function assignedProcedures(
  { db, siteId }: Reading,
  joint: JointState,
): Promise<Map<string, AssignedProcedure>> {
  const assigned = joint.makes.flatMap((make) => (make.procedure ? [make.procedure] : []));
  if (assigned.length === 0) return new Map();
  const { rows } = await db.query<{
    procedureId: string;
    revision: number;
    code: string;
    title: string;
    content: AssignedProcedure['content'];
    approvedAt: Date | null;
    supersededAt: Date | null;
    lubricant: Payload<'lubricant-entered'> | null;
  }>({
    name: 'assigned-procedures',
    text: `SELECT p.procedure_id AS "procedureId", p.revision, p.code, p.title, p.content, p.approved_at AS "approvedAt",
        p.superseded_at AS "supersededAt", d.content AS lubricant
      FROM procedure_revision p
      LEFT JOIN sourced_data d ON d.site_id = p.site_id AND d.data_id = (p.content->>'lubricantId')::uuid AND d.kind = 'lubricant'
      WHERE p.site_id = $1 AND (p.procedure_id, p.revision) IN (SELECT * FROM unnest($2::uuid[], $3::int[]))`,
    values: [siteId, assigned.map((each) => each.procedureId), assigned.map((each) => each.revision)],
  });
  return new Map(
    rows.map(({ approvedAt, supersededAt, lubricant, ...row }) => [
      `${row.procedureId} ${row.revision}`,
      {
        ...row,
        approvedAt: approvedAt?.toISOString() ?? null,
        supersededAt: supersededAt?.toISOString() ?? null,
        lubricant: lubricant
          ? { name: lubricant.name, nutFactor: lubricant.nutFactor, source: lubricant.source }
          : null,
      },
    ]),
  );
}

export interface PackOfMake {
  readonly packId: string;
  readonly number: string;
  readonly released: boolean;
}

export async function packsOfJoint(
  { db, siteId, shutdownId }: Reading,
  joint: JointState,
): Promise<Map<string, PackOfMake>> {
  const packIds = joint.makes.flatMap((make) => make.packs.map((pack) => pack.packId));
  if (packIds.length === 0) return new Map();
  const { rows } = await db.query<PackOfMake>({
    name: 'packs-of-joint',
    text: `SELECT pack_id AS "packId", number, released IS NOT NULL AS released FROM test_pack
      WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = ANY($3::uuid[])`,
    values: [siteId, shutdownId, packIds],
  });
  return new Map(rows.map((row) => [row.packId, row]));
}
