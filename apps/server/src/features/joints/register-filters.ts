import { type RegisterFilters, STAGES } from '@seatwell/contract';
import type { Reading } from '../reading/reading.ts';
import { CHANGES_WITH_TIME } from './joint-row.ts';

const HOUR_MS = 3_600_000;

/** Collects the values of a statement and gives each its place. */
export class Values {
  readonly list: unknown[] = [];

  add(value: unknown): string {
    this.list.push(value);
    return `$${this.list.length}`;
  }
}

type InShutdown = Pick<Reading, 'siteId' | 'shutdownId' | 'shutdown' | 'now'>;

/** The make that the row shows has its relaxation pass due so. Asked once of the few makes that have one due. */
const relaxationDueSql = ({ siteId, shutdownId }: InShutdown, values: Values, due: string): string => `j.make_id IN (
  SELECT m.make_id FROM make m WHERE m.site_id = ${values.add(siteId)} AND m.shutdown_id = ${values.add(shutdownId)}
    AND m.relaxation_due_at ${due})`;

const relaxationDueNow = (reading: InShutdown, values: Values): string =>
  relaxationDueSql(reading, values, `<= ${values.add(reading.now)}::timestamptz`);

/** The flags that come with time: a relaxation pass that is or will be due, and one that is overdue. */
function relaxationFlagSql(reading: InShutdown, values: Values, flag: string): string {
  const { relaxationPassAfter_h, relaxationPassOverdue_h } = reading.shutdown.settings;
  const overdueAfter_ms = (relaxationPassOverdue_h - relaxationPassAfter_h) * HOUR_MS;
  const overdue = values.add(new Date(Date.parse(reading.now) - overdueAfter_ms).toISOString());
  const due = `${flag === 'relaxation-overdue' ? '<=' : '>'} ${overdue}::timestamptz`;
  return `(j.stage IN ${CHANGES_WITH_TIME} AND ${relaxationDueSql(reading, values, due)})`;
}

/** What a joint `j` waits for at this moment: the stored answer, and what time alone has changed since. */
export function waitsNowSql(reading: InShutdown, values: Values): string {
  const lapse_ms = reading.shutdown.settings.faceAcceptanceLapses_h * HOUR_MS;
  const lapsedBefore = values.add(new Date(Date.parse(reading.now) - lapse_ms).toISOString());
  return `CASE
  WHEN j.waits_for = 'nip-up' AND j.stage_since < ${lapsedBefore}::timestamptz THEN 'faces-again'
  WHEN j.waits_for IN ('check', 'witness') AND ${relaxationDueNow(reading, values)} THEN 'relaxation-pass'
  ELSE j.waits_for END`;
}

/** Stored waits that may stand behind one that is asked for, so that rows are first narrowed by what is stored. */
const STORED_BEHIND: Readonly<Record<string, readonly string[]>> = {
  'faces-again': ['nip-up'],
  'relaxation-pass': ['check', 'witness'],
};

const RELAXATION_FLAGS: readonly string[] = ['relaxation-due', 'relaxation-overdue'];

const PUNCH_COLUMNS: Readonly<Record<string, string>> = {
  'punch-A': 'punch_a',
  'punch-B': 'punch_b',
  'punch-C': 'punch_c',
};

function flagFilter(reading: InShutdown, flags: readonly string[], values: Values): string {
  const stored = flags.filter(
    (flag) => flag !== 'part-tight' && !RELAXATION_FLAGS.includes(flag) && !PUNCH_COLUMNS[flag],
  );
  const any = [
    ...(stored.length > 0 ? [`j.flags && ${values.add(stored)}::text[]`] : []),
    ...(flags.includes('part-tight') ? ["j.stage = 'part-tight'"] : []),
    ...flags.flatMap((flag) => (PUNCH_COLUMNS[flag] ? [`j.${PUNCH_COLUMNS[flag]} > 0`] : [])),
    ...flags.flatMap((flag) => (RELAXATION_FLAGS.includes(flag) ? [relaxationFlagSql(reading, values, flag)] : [])),
  ];
  return `(${any.join(' OR ')})`;
}

const likePattern = (search: string): string =>
  `%${search.toLowerCase().replaceAll(/[\\%_]/g, (sign) => `\\${sign}`)}%`;

/** A make that needs a target and has none: the same words as the index `extra_joint_without_target`. */
export const WITHOUT_TARGET = "((j.stage_rank = 0 AND j.work_scope <> 'test-only') OR j.waits_for = 'target')";

/** The filters as conditions on `j`, the table of joints; everything that a request says is a value, never text. */
export function registerConditions(reading: InShutdown, filters: RegisterFilters, values: Values): string[] {
  const conditions = [`j.site_id = ${values.add(reading.siteId)}`, `j.shutdown_id = ${values.add(reading.shutdownId)}`];
  const add = (condition: string) => conditions.push(condition);
  const among = (column: string, wanted: readonly string[] | undefined, type: string) => {
    if (wanted?.length === 1) add(`j.${column} = ${values.add(wanted[0])}::${type}`);
    else if (wanted?.length) add(`j.${column} = ANY(${values.add(wanted)}::${type}[])`);
  };
  if (filters.voided === 'no') add('j.voided IS NULL');
  if (filters.voided === 'only') add('j.voided IS NOT NULL');
  among('area_id', filters.area, 'uuid');
  among('system_id', filters.system, 'uuid');
  among('crew_id', filters.crew, 'uuid');
  among('criticality', filters.criticality, 'text');
  among('gasket_family', filters.gasketFamily, 'text');
  among('size', filters.size, 'text');
  among('rating', filters.rating, 'text');
  among('kind', filters.kind, 'text');
  if (filters.pack) add(`j.pack_ids @> ARRAY[${values.add(filters.pack)}::uuid]`);
  if (filters.stage?.length) {
    const ranks = filters.stage.map((stage) => STAGES.indexOf(stage));
    add(
      ranks.length === 1 ? `j.stage_rank = ${values.add(ranks[0])}` : `j.stage_rank = ANY(${values.add(ranks)}::int[])`,
    );
  }
  if (filters.stageFrom) add(`j.stage_rank >= ${values.add(STAGES.indexOf(filters.stageFrom))}`);
  if (filters.stageTo) add(`j.stage_rank <= ${values.add(STAGES.indexOf(filters.stageTo))}`);
  if (filters.plannedFrom) add(`j.planned_on >= ${values.add(filters.plannedFrom)}::date`);
  if (filters.plannedUpTo) add(`j.planned_on <= ${values.add(filters.plannedUpTo)}::date`);
  if (filters.found !== undefined) add(filters.found ? 'j.found' : 'NOT j.found');
  if (filters.withoutTarget !== undefined) add(filters.withoutTarget ? WITHOUT_TARGET : `NOT ${WITHOUT_TARGET}`);
  if (filters.search) add(`j.search_text LIKE ${values.add(likePattern(filters.search))}`);
  if (filters.flag?.length) add(flagFilter(reading, filters.flag, values));
  if (filters.waitsFor?.length || filters.by) {
    const effective = waitsNowSql(reading, values);
    if (filters.waitsFor?.length) {
      const stored = filters.waitsFor.flatMap((code) => [code, ...(STORED_BEHIND[code] ?? [])]);
      add(`j.waits_for = ANY(${values.add([...new Set(stored)])}::text[])`);
      add(`${effective} = ANY(${values.add(filters.waitsFor)}::text[])`);
    }
    if (filters.by) {
      add(
        `CASE WHEN ${effective} = j.waits_for THEN j.waits_for_data->>'by' ELSE 'technician' END = ${values.add(filters.by)}`,
      );
    }
  }
  return conditions;
}
