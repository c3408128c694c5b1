import { inchNumber } from './fraction.ts';
import { type DecimalMark, parseNumber } from './number-text.ts';
import { ask, type Cell, plainSigns, quoted, type Reading, read, refuse } from './reading.ts';
import { type Measure, offeredUnits, type Unit, unitOf } from './units.ts';

/** A reading keeps its SI value and what was entered. */
export interface Quantity {
  /** MPa gauge, °C or mm. */
  readonly si: number;
  readonly entered: { readonly value: number; readonly unit: string };
  /** Set where an absolute pressure was turned into gauge with one standard atmosphere. */
  readonly fromAbsolute?: true;
}

const names: Readonly<Record<Measure, string>> = {
  pressure: 'pressure',
  temperature: 'temperature',
  length: 'length',
};
const plausible: Readonly<Record<Measure, readonly [number, number, string]>> = {
  pressure: [-0.101325, 1400, 'MPa'],
  temperature: [-273.15, 1500, '°C'],
  length: [0, 5000, 'mm'],
};

function build(value: number, unit: Unit, cell: Cell): Reading<Quantity> {
  // Twelve digits: conversion must not turn 10 bar into 0.9999999999999999 MPa.
  const si = Number(unit.toSi(value).toPrecision(12));
  const [least, most, siUnit] = plausible[unit.measure];
  if (!(si >= least && si <= most)) {
    return refuse(
      `${unit.measure}-implausible`,
      `${quoted(cell)}: ${value} ${unit.name} is ${si} ${siUnit}, outside ${least} to ${most} ${siUnit}. Check value and unit.`,
    );
  }
  const entered = { value, unit: unit.name };
  return read(unit.absolute ? { si, entered, fromAbsolute: true as const } : { si, entered });
}

/**
 * Reads a pressure, temperature or length. A unit in the cell (`10 barg`) goes before the column's; without
 * either the unit is asked once for the column.
 *
 * @param cell the cell
 * @param measure what is measured
 * @param unit the unit of the column, from its header or as answered
 * @param decimal the decimal mark of the column, where known
 */
export function parseQuantity(cell: Cell, measure: Measure, unit?: Unit, decimal?: DecimalMark): Reading<Quantity> {
  if (typeof cell === 'number' || typeof cell === 'boolean' || cell instanceof Date || cell === null) {
    return withUnit(parseNumber(cell, decimal), unit, measure, cell);
  }
  const text = plainSigns(cell);
  const split = /^([+-]?[\d.,' ]*\d[\d.,' /-]*?)\s*([^\d\s.,'/+-].*)$/.exec(text);
  const own = split ? unitOf(split[2]!, measure) : undefined;
  if (split && !own) {
    return refuse(
      `${measure}-unreadable`,
      `${quoted(cell)} cannot be read as a ${names[measure]}. Enter one number, with its unit (${offeredUnits[measure].join(', ')}) or with the unit in the header.`,
    );
  }
  const digits = (split ? split[1]! : text).trim();
  const chosen = own ?? unit;
  const inches = chosen?.name === 'in' && digits.includes('/') ? inchNumber(digits) : undefined;
  return withUnit(inches === undefined ? parseNumber(digits, decimal) : read(inches), chosen, measure, cell);
}

function withUnit(number: Reading<number>, unit: Unit | undefined, measure: Measure, cell: Cell): Reading<Quantity> {
  if (number.ok !== true) return number;
  if (unit) return build(number.value, unit, cell);
  return ask(
    `${measure}-unit`,
    `In which unit is the ${names[measure]} of this column? ${quoted(cell)} has none.`,
    offeredUnits[measure].map((name) => ({
      value: name,
      label: `${number.value} ${name}`,
    })),
  );
}
