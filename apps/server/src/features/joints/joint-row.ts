import type { JointRow } from '@seatwell/contract';
import { type JointState, relaxationDue, waitsFor } from '@seatwell/workflow';
import type { Reading } from '../reading/reading.ts';
import { shownMake } from './shown-make.ts';

/** Stages whose wait or flag may change by time passing alone: only their state is read with a list. */
export const CHANGES_WITH_TIME = "('faces-accepted', 'tight', 'checked', 'proven')";

/** What `jointRowsSql` answers for each joint. */
export interface JointRowColumns {
  readonly row: Omit<JointRow, 'flags' | 'waitsFor' | 'punch'> & {
    readonly flags: string[];
    readonly punch: JointRow['punch'];
    readonly waitsForCode: string;
    readonly waitsForData: { by: string | null } & Record<string, unknown>;
  };
  readonly state: JointState | null;
}

/**
 * The row of a list as one JSON value: `p` are rows of the table of joints, already chosen.
 * @param page SQL that selects whole rows of joints
 * @param order SQL of the order, in terms of `p`
 * @param more further columns, beginning with a comma
 */
export const jointRowsSql = (page: string, order: string, more = ''): string => `
  SELECT jsonb_build_object('jointId', p.joint_id, 'tag', p.tag, 'kind', p.kind, 'criticality', p.criticality,
      'area', CASE WHEN a.area_id IS NOT NULL THEN jsonb_build_object('areaId', a.area_id, 'code', a.code, 'name', a.name) END,
      'system', CASE WHEN s.system_id IS NOT NULL
        THEN jsonb_build_object('systemId', s.system_id, 'code', s.code, 'name', s.name) END,
      'line', p.line, 'location', p.location, 'item', p.item, 'standard', p.standard, 'size', p.size, 'rating', p.rating,
      'boltCount', p.bolt_count, 'boltThread', p.bolt_thread, 'gasketFamily', p.gasket_family, 'stage', p.stage,
      'stageSince', to_char(p.stage_since AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
      'flags', to_jsonb(p.flags), 'torque_Nm', p.torque_nm,
      'crew', CASE WHEN c.crew_id IS NOT NULL THEN jsonb_build_object('crewId', c.crew_id, 'code', c.code) END,
      'plannedOn', p.planned_on, 'makeId', p.make_id, 'makeNumber', p.make_number, 'makeCount', p.make_count,
      'workScope', p.work_scope, 'version', p.version, 'found', p.found, 'voided', p.voided,
      'punch', jsonb_build_object('A', p.punch_a, 'B', p.punch_b, 'C', p.punch_c),
      'packs', CASE WHEN p.pack_ids = '{}' THEN '[]' ELSE coalesce((
        SELECT jsonb_agg(jsonb_build_object('packId', t.pack_id, 'number', t.number) ORDER BY t.number_key) FROM test_pack t
        WHERE t.site_id = p.site_id AND t.shutdown_id = p.shutdown_id AND t.pack_id = ANY(p.pack_ids)), '[]') END,
      'waitsForCode', p.waits_for, 'waitsForData', p.waits_for_data) AS row,
    CASE WHEN p.stage IN ${CHANGES_WITH_TIME} THEN p.state END AS state${more}
  FROM (${page}) p
  LEFT JOIN area a ON a.site_id = p.site_id AND a.shutdown_id = p.shutdown_id AND a.area_id = p.area_id
  LEFT JOIN system s ON s.site_id = p.site_id AND s.shutdown_id = p.shutdown_id AND s.system_id = p.system_id
  LEFT JOIN crew c ON c.site_id = p.site_id AND c.shutdown_id = p.shutdown_id AND c.crew_id = p.crew_id
  ORDER BY ${order}`;

/** Puts what time has changed since the last event of a joint into its row. */
export function toJointRow(
  { row, state }: JointRowColumns,
  { shutdown, now }: Pick<Reading, 'shutdown' | 'now'>,
): JointRow {
  const { waitsForCode, waitsForData, flags, ...rest } = row;
  const { by, ...data } = waitsForData;
  const make = state ? shownMake(state) : null;
  const wait = state && make ? waitsFor(state, make, shutdown.settings, now) : { code: waitsForCode, by, data };
  const due = state && make ? relaxationDue(state, make, shutdown.settings) : null;
  const more = [
    ...(rest.stage === 'part-tight' ? ['part-tight'] : []),
    ...(due ? [Date.parse(now) >= Date.parse(due.overdueFrom) ? 'relaxation-overdue' : 'relaxation-due'] : []),
    ...(['A', 'B', 'C'] as const).filter((category) => rest.punch[category] > 0).map((category) => `punch-${category}`),
  ];
  return { ...rest, flags: [...flags, ...more], waitsFor: wait as JointRow['waitsFor'] };
}
