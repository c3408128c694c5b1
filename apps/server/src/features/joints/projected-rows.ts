import { type ShutdownSettings, STAGES } from '@seatwell/contract';
import {
  gasketOf,
  type JointState,
  type MakeState,
  relaxationDue,
  temporaryFittingOf,
  waitsFor,
} from '@seatwell/workflow';
import { naturalKey } from './natural-key.ts';
import { shownMake } from './shown-make.ts';
import { sizeRank } from './size-rank.ts';

/** Whose joints they are, with the settings that decide what a joint waits for. */
export interface Place {
  readonly siteId: string;
  readonly shutdownId: string;
  readonly settings: ShutdownSettings;
}

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

/** The register's row of a joint. */
export function jointRow(
  { siteId, shutdownId, settings }: Place,
  joint: JointState,
  now: string,
): Record<string, unknown> {
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

/** The row of one of its makes. */
export function makeRow(place: Place, joint: JointState, make: MakeState): Record<string, unknown> {
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

export const JOINT_COLUMNS = [
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

export const MAKE_COLUMNS = [
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
