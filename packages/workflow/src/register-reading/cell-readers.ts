import { parseBolt } from './bolt.ts';
import { parseCriticality } from './criticality.ts';
import { type DateOrder, parseDate } from './date.ts';
import { parseFacing } from './facing.ts';
import type { RegisterField } from './fields.ts';
import { parseGasketFamily } from './gasket-family.ts';
import { parseKind } from './kind.ts';
import { type DecimalMark, parseCount } from './number-text.ts';
import { parseQuantity } from './quantity.ts';
import { parseRating, type RatingSystem } from './rating.ts';
import { type Cell, plainText, quoted, type Reading, read, refuse } from './reading.ts';
import type { RegisterValues } from './register-values.ts';
import { parseSize, type SizeSystem } from './size.ts';
import { parseStandard } from './standard.ts';
import type { Measure, Unit } from './units.ts';
import { parseWorkScope } from './work-scope.ts';

/** What is known about a column before its cells are read. */
export interface ColumnContext {
  readonly sizeSystem?: SizeSystem;
  readonly ratingSystem?: RatingSystem;
  readonly dateOrder?: DateOrder;
  readonly decimal?: DecimalMark;
  readonly unit?: Unit;
  readonly criticalityLevels?: readonly string[];
}

/** Values that a cell contributes: mostly one, more where `8 x M16 x 90` stands in one cell. */
export type CellValues = Partial<RegisterValues>;

/** Fields with a unit and what they measure. */
export const measures: Readonly<Partial<Record<RegisterField, Measure>>> = {
  boltLength: 'length',
  insertThickness: 'length',
  designPressure: 'pressure',
  testPressure: 'pressure',
  designTemperature: 'temperature',
};

const longest: Readonly<Partial<Record<RegisterField, number>>> = { remark: 2000 };

function text(field: RegisterField, cell: Cell): Reading<CellValues> {
  const value = plainText(cell);
  const limit = longest[field] ?? 200;
  if (value.length > limit) {
    return refuse('text-too-long', `${quoted(cell)} has ${value.length} characters, at most ${limit} fit. Shorten it.`);
  }
  return read({ [field]: value });
}

function mapped<T>(reading: Reading<T>, toValues: (value: T) => CellValues): Reading<CellValues> {
  return reading.ok === true ? read(toValues(reading.value)) : reading;
}

function packs(cell: Cell): Reading<CellValues> {
  const names = plainText(cell)
    .split(/\s*[;,]\s*/)
    .filter((name) => name !== '');
  const long = names.find((name) => name.length > 200);
  return long === undefined ? read({ testPack: [...new Set(names)] }) : text('testPack', long);
}

function bolt(cell: Cell): Reading<CellValues> {
  return mapped(parseBolt(cell), ({ thread, count, length_mm }) => ({
    boltThread: thread,
    ...(count === undefined ? {} : { boltCount: count }),
    ...(length_mm === undefined ? {} : { boltLength: { si: length_mm, entered: { value: length_mm, unit: 'mm' } } }),
  }));
}

type Reader = (cell: Cell, context: ColumnContext) => Reading<CellValues>;

const readers: Readonly<Partial<Record<RegisterField, Reader>>> = {
  kind: (cell) => mapped(parseKind(cell), (value) => ({ ...value })),
  standard: (cell) => mapped(parseStandard(cell), (standard) => ({ standard })),
  size: (cell, context) => mapped(parseSize(cell, context.sizeSystem), ({ size }) => ({ size })),
  rating: (cell, context) => mapped(parseRating(cell, context.ratingSystem), (value) => ({ ...value })),
  facing: (cell) => mapped(parseFacing(cell), (facing) => ({ facing })),
  boltCount: (cell) => mapped(parseCount(cell, 'bolt count', 400), (boltCount) => ({ boltCount })),
  boltThread: bolt,
  gasketFamily: (cell) => mapped(parseGasketFamily(cell), (gasketFamily) => ({ gasketFamily })),
  gasketCount: (cell) => mapped(parseCount(cell, 'gasket count', 4), (gasketCount) => ({ gasketCount })),
  testPack: packs,
  criticality: (cell, context) =>
    mapped(parseCriticality(cell, context.criticalityLevels), (criticality) => ({ criticality })),
  workScope: (cell) => mapped(parseWorkScope(cell), (workScope) => ({ workScope })),
  plannedDate: (cell, context) => mapped(parseDate(cell, context.dateOrder), (plannedDate) => ({ plannedDate })),
};

/** No size, date or word of the trade is longer; beyond it patterns would take their time over junk. */
const longestParsed = 200;

/** Reads one cell of a field. */
export function readCell(field: RegisterField, cell: Cell, context: ColumnContext): Reading<CellValues> {
  const measure = measures[field];
  const reader = readers[field];
  if (measure === undefined && reader === undefined) return text(field, cell);
  if (typeof cell === 'string' && cell.length > longestParsed) {
    return refuse(
      'text-too-long',
      `${quoted(cell)} has ${cell.length} characters, at most ${longestParsed} fit. Shorten it, or choose the right column.`,
    );
  }
  if (measure === undefined) return reader!(cell, context);
  return mapped(parseQuantity(cell, measure, context.unit, context.decimal), (value) => ({ [field]: value }));
}
