import type { AreaProgress } from '@seatwell/contract';
import { reached } from '../../reading/stage-counts.ts';
import type { ReportSource } from './load-report.ts';

const FIGURES = [
  'total',
  'planned',
  'tight',
  'checked',
  'proven',
  'waiting',
  'partTight',
  'unclosedA',
  'lapsing',
  'missing',
] as const;
export type Figure = (typeof FIGURES)[number];
export type ReportLine = Readonly<Record<Figure, number>>;

/** Figures in the order of their columns. */
export const inColumns = (line: ReportLine): number[] => FIGURES.map((figure) => line[figure]);
export const figureNames = FIGURES;

const persons = (rows: readonly { readonly person: { readonly personId: string } }[]): number =>
  new Set(rows.map(({ person }) => person.personId)).size;

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

/** Several areas as one line: joints add up; a person who works in several of them counts once. */
export function lineOf(rows: readonly AreaProgress[], unclosedA: number): ReportLine {
  const of = (figure: (row: AreaProgress) => number) => sum(rows.map(figure));
  return {
    total: of((row) => row.total),
    planned: of((row) => row.planned),
    tight: of((row) => reached(row.stages, 'tight')),
    checked: of((row) => reached(row.stages, 'checked')),
    proven: of((row) => reached(row.stages, 'proven')),
    waiting: of((row) => sum(row.signOffs.map(({ waiting }) => waiting))),
    partTight: of((row) => row.stages['part-tight']),
    unclosedA,
    lapsing: persons(rows.flatMap((row) => row.people.lapsing)),
    missing: persons(rows.flatMap((row) => row.people.missing)),
  };
}

/** Unclosed A items of the systems of these areas. */
export function unclosedA({ systems }: ReportSource, rows: readonly AreaProgress[]): number {
  const areaIds = new Set(rows.flatMap(({ area }) => (area ? [area.areaId] : [])));
  return sum(systems.map(({ area, zeros }) => (area && areaIds.has(area.areaId) ? zeros.unclosedA : 0)));
}

/** Of every system, those in no area too. */
export const allUnclosedA = ({ systems }: ReportSource): number => sum(systems.map(({ zeros }) => zeros.unclosedA));
