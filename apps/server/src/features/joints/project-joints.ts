import type { ShutdownSettings } from '@seatwell/contract';
import { STAGES } from '@seatwell/contract';
import {
  currentMake,
  gasketOf,
  type JointState,
  type MakeState,
  makeToWorkOn,
  relaxationDue,
  temporaryFittingOf,
  waitsFor,
} from '@seatwell/workflow';
import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import type { RollupDelta } from '../recording/decision.ts';
import { naturalKey } from './natural-key.ts';
import { sizeRank } from './size-rank.ts';

export interface JointChange {
  readonly before: JointState | null;
  readonly after: JointState;
}

interface Place {
  readonly siteId: string;
  readonly shutdownId: string;
  readonly settings: ShutdownSettings;
}

/** The make that the register shows: the one to work on, or the last there was. */
export const shownMake = (joint: JointState): MakeState | null => makeToWorkOn(joint) ?? currentMake(joint);

const stageRank = (stage: string): number => STAGES.indexOf(stage as (typeof STAGES)[number]);

/** What stands beside the stage and does not change by time passing alone. */
function lastingFlags(joint: JointState, make: MakeState | null): string[] {
  const flags: string[] = [];
  if (joint.voided) flags.push('voided');
  if (joint.found) flags.push('found');
  if (joint.holds.length > 0) flags.push('on-hold');
  if (!make) return flags;
  if (make.rejected) flags.push('rejected');
  if (make.leaking) flags.push('leaking');
  if (make.retighten) flags.push('retighten');
  if (make.waiting.length > 0) flags.push('needs-review');
  if (make.implausible.length > 0) flags.push('implausible');
  if (make.provisionalTools.length > 0) flags.push('provisional-tool');
  if (temporaryFittingOf(joint)) flags.push('temporary-fitting');
  return flags;
}

function jointRow({ siteId, shutdownId, settings }: Place, joint: JointState, now: string): Record<string, unknown> {
  const make = shownMake(joint);
  const wait = make ? waitsFor(joint, make, settings, now) : { code: 'nothing', by: null, data: {} };
  const { flange } = joint.specification;
  return {
    site_id: siteId,
    shutdown_id: shutdownId,
    joint_id: joint.jointId,
    place_id: joint.placeId,
    tag: joint.tag,
    tag_key: `\\x${naturalKey(joint.tag).toString('hex')}`,
    search_text: [joint.tag, joint.whereabouts.line, joint.whereabouts.location, joint.whereabouts.item]
      .filter(Boolean)
      .join(' ')
      .toLowerCase(),
    kind: joint.kind,
    criticality: joint.criticality,
    area_id: joint.whereabouts.areaId,
    system_id: joint.whereabouts.systemId,
    line: joint.whereabouts.line,
    location: joint.whereabouts.location,
    item: joint.whereabouts.item,
    standard: flange.standard,
    size: flange.size,
    size_rank: sizeRank(flange.size),
    rating: flange.rating,
    bolt_count: joint.bolting?.count ?? null,
    bolt_thread: joint.bolting?.thread ?? null,
    gasket_family: make ? gasketOf(joint, make).family : joint.specification.gasket.family,
    found: joint.found !== null,
    voided: joint.voided?.why ?? null,
    on_hold: joint.holds.length > 0,
    make_id: make?.makeId ?? null,
    make_number: make?.number ?? null,
    make_count: joint.makes.filter((each) => !each.cancelled).length,
    work_scope: make?.workScope ?? null,
    stage: make?.stage ?? 'planned',
    stage_rank: stageRank(make?.stage ?? 'planned'),
    stage_since: make?.stageSince ?? null,
    flags: lastingFlags(joint, make),
    waits_for: wait.code,
    waits_for_data: { by: wait.by, ...wait.data },
    planned_on: make?.plannedOn ?? null,
    crew_id: make?.crewId ?? null,
    torque_nm: make?.target?.torque_Nm ?? null,
    pack_ids: make?.packs.map((pack) => pack.packId) ?? [],
    version: joint.version,
    state: joint,
    updated_at: now,
  };
}

function makeRow(place: Place, joint: JointState, make: MakeState): Record<string, unknown> {
  const temporary = temporaryFittingOf(joint);
  return {
    site_id: place.siteId,
    shutdown_id: place.shutdownId,
    make_id: make.makeId,
    joint_id: joint.jointId,
    number: make.number,
    purpose: make.purpose,
    work_scope: make.workScope,
    stage: make.stage,
    stage_rank: stageRank(make.stage),
    current: shownMake(joint)?.makeId === make.makeId,
    cancelled: make.cancelled,
    planned_on: make.plannedOn,
    crew_id: make.crewId,
    procedure_id: make.procedure?.procedureId ?? null,
    procedure_revision: make.procedure?.revision ?? null,
    target_hash: make.target?.inputsHash ?? null,
    temporary_fitting: temporary?.makeId === make.makeId,
    relaxation_due_at: relaxationDue(joint, make, place.settings)?.from ?? null,
    lot_key: make.lotKey,
    check_rejected: make.rejected,
    tools_used: make.toolsUsed,
    worked_by: make.workedBy,
    tight_at: make.tightAt,
  };
}

const JOINT_COLUMNS = [
  'site_id',
  'shutdown_id',
  'joint_id',
  'place_id',
  'tag',
  'tag_key',
  'search_text',
  'kind',
  'criticality',
  'area_id',
  'system_id',
  'line',
  'location',
  'item',
  'standard',
  'size',
  'size_rank',
  'rating',
  'bolt_count',
  'bolt_thread',
  'gasket_family',
  'found',
  'voided',
  'on_hold',
  'make_id',
  'make_number',
  'make_count',
  'work_scope',
  'stage',
  'stage_rank',
  'stage_since',
  'flags',
  'waits_for',
  'waits_for_data',
  'planned_on',
  'crew_id',
  'torque_nm',
  'pack_ids',
  'version',
  'state',
  'updated_at',
];

const MAKE_COLUMNS = [
  'site_id',
  'shutdown_id',
  'make_id',
  'joint_id',
  'number',
  'purpose',
  'work_scope',
  'stage',
  'stage_rank',
  'current',
  'cancelled',
  'planned_on',
  'crew_id',
  'procedure_id',
  'procedure_revision',
  'target_hash',
  'temporary_fitting',
  'relaxation_due_at',
  'lot_key',
  'check_rejected',
  'tools_used',
  'worked_by',
  'tight_at',
];

const upsert = (table: string, key: string, columns: readonly string[]): string =>
  `INSERT INTO ${table} (${columns.join(', ')})
   SELECT ${columns.map((c) => `r.${c}`).join(', ')} FROM jsonb_populate_recordset(NULL::${table}, $1::jsonb) r
   ON CONFLICT (${key}) DO UPDATE SET ${columns
     .filter((c) => !key.split(', ').includes(c))
     .map((c) => `${c} = excluded.${c}`)
     .join(', ')}`;

const UPSERT_JOINT = upsert('joint', 'site_id, shutdown_id, joint_id', JOINT_COLUMNS);
// The id of a make is made by a client: one that another joint has is never taken over.
const UPSERT_MAKE = `${upsert('make', 'site_id, shutdown_id, make_id', MAKE_COLUMNS)}
   WHERE make.joint_id = excluded.joint_id`;
const AT_ONCE = 1000;

/**
 * Writes the register's rows of joints and makes after their fold, and answers how the counts by stage move.
 * One joint or fifty thousand take the same path.
 */
export async function projectJoints(
  tx: Transaction,
  place: Place,
  changes: readonly JointChange[],
  now: string,
): Promise<RollupDelta[]> {
  for (let from = 0; from < changes.length; from += AT_ONCE) {
    const part = changes.slice(from, from + AT_ONCE).map((change) => change.after);
    await tx.query({
      name: 'project-joints',
      text: UPSERT_JOINT,
      values: [JSON.stringify(part.map((joint) => jointRow(place, joint, now)))],
    });
    const makes = part.flatMap((joint) => joint.makes.map((make) => makeRow(place, joint, make)));
    const { rowCount } = await tx.query({
      name: 'project-makes',
      text: UPSERT_MAKE,
      values: [JSON.stringify(makes)],
    });
    if (rowCount !== makes.length)
      throw new Problem('already-exists', 'Another joint has a make of this id. Make a new id for each new make.');
  }
  await projectPackMembership(tx, place, changes);
  return changes.flatMap(({ before, after }) => [
    ...(before ? counted(place, before).map((delta) => ({ ...delta, count: -1 })) : []),
    ...counted(place, after),
  ]);
}

async function projectPackMembership(tx: Transaction, place: Place, changes: readonly JointChange[]): Promise<void> {
  const packsOf = (joint: JointState | null) =>
    joint?.makes.flatMap((make) =>
      make.packs.map((pack) => ({ ...pack, makeId: make.makeId, jointId: joint.jointId })),
    ) ?? [];
  const moved = changes.filter(
    ({ before, after }) => JSON.stringify(packsOf(before)) !== JSON.stringify(packsOf(after)),
  );
  if (moved.length === 0) return;
  const rows = moved.flatMap(({ after }) => packsOf(after));
  await tx.query('DELETE FROM make_pack WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = ANY($3::uuid[])', [
    place.siteId,
    place.shutdownId,
    moved.map(({ after }) => after.jointId),
  ]);
  await tx.query(
    `INSERT INTO make_pack (site_id, shutdown_id, pack_id, make_id, joint_id, role)
     SELECT $1, $2, p.* FROM unnest($3::uuid[], $4::uuid[], $5::uuid[], $6::text[]) AS p (pack_id, make_id, joint_id, role)`,
    [
      place.siteId,
      place.shutdownId,
      rows.map((row) => row.packId),
      rows.map((row) => row.makeId),
      rows.map((row) => row.jointId),
      rows.map((row) => row.role),
    ],
  );
}

/** Where a joint is counted: once in its shutdown, area and system, and in each pack of the make that it shows. */
function counted({ shutdownId }: Place, joint: JointState): RollupDelta[] {
  if (joint.voided) return [];
  const make = shownMake(joint);
  const stage = make?.stage ?? 'planned';
  const { areaId, systemId } = joint.whereabouts;
  const one = { stage, count: 1 };
  return [
    { dimension: 'shutdown', key: shutdownId, ...one },
    ...(areaId ? [{ dimension: 'area' as const, key: areaId, ...one }] : []),
    ...(systemId ? [{ dimension: 'system' as const, key: systemId, ...one }] : []),
    ...(make?.packs ?? []).map((pack) => ({ dimension: 'pack' as const, key: pack.packId, ...one })),
  ];
}
