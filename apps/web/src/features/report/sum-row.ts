import type { AreaProgress, SystemsAnswer, TodayAnswer } from '@seatwell/contract';
import { progressOf } from '../areas/progress.ts';

/** One line of the report. */
export interface ReportLine {
  readonly total: number;
  readonly planned: number;
  /** tight or beyond */
  readonly tight: number;
  /** checked or beyond */
  readonly checked: number;
  /** proven or beyond */
  readonly proven: number;
  /** sign-offs that joints wait for */
  readonly waiting: number;
  readonly partTight: number;
  readonly lapsing: number;
  readonly missing: number;
}

/** The figures of an area. */
export function reportLine(row: AreaProgress): ReportLine {
  const { tight, checked } = progressOf(row.stages);
  return {
    total: row.total,
    planned: row.planned,
    tight: tight + checked,
    checked,
    proven: row.stages.proven + row.stages['handed-over'],
    waiting: row.signOffs.reduce((sum, signOff) => sum + signOff.waiting, 0),
    partTight: row.stages['part-tight'],
    lapsing: new Set(row.people.lapsing.map((each) => each.person.personId)).size,
    missing: new Set(row.people.missing.map((each) => each.person.personId)).size,
  };
}

/** The whole shutdown: joints add up; a person who works in several areas counts once. */
export function sumRow(rows: readonly AreaProgress[], today: Pick<TodayAnswer, 'total'>): ReportLine {
  const lines = rows.map(reportLine);
  const sum = (of: (line: ReportLine) => number) => lines.reduce((total, line) => total + of(line), 0);
  const persons = (of: (row: AreaProgress) => readonly { person: { personId: string } }[]) =>
    new Set(rows.flatMap((row) => of(row).map((each) => each.person.personId))).size;
  return {
    total: today.total,
    planned: sum((line) => line.planned),
    tight: sum((line) => line.tight),
    checked: sum((line) => line.checked),
    proven: sum((line) => line.proven),
    waiting: sum((line) => line.waiting),
    partTight: sum((line) => line.partTight),
    lapsing: persons((row) => row.people.lapsing),
    missing: persons((row) => row.people.missing),
  };
}

/** Unclosed A items of an area's systems; of all systems where no area is given. */
export function openA(systems: SystemsAnswer['rows'], areaId?: string): number {
  return systems
    .filter((system) => areaId === undefined || system.area?.areaId === areaId)
    .reduce((sum, system) => sum + system.zeros.unclosedA, 0);
}
