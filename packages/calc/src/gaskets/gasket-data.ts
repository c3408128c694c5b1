import { flangeRating, flangeSize, flangeStandard } from '../flanges/keys.ts';
import { refuse } from '../refusal.ts';
import { citation, numberIn, requiredNumberIn, type SourcedTable, tableRows, textIn } from '../tables/sourced-table.ts';
import { gasketFamily } from './families.ts';
import { ringJoint } from './ring-groove.ts';
import { ASME_VIII_GASKET_FACTORS } from './tables/asme-viii-factors.ts';
import { GASKET_DIMENSIONS_ASME_B16_5 } from './tables/dimensions-asme-b16-5.ts';
import { GASKET_DIMENSIONS_ASME_B16_47 } from './tables/dimensions-asme-b16-47.ts';
import { GASKET_DIMENSIONS_EN_1092_1 } from './tables/dimensions-en-1092-1.ts';

/** One row of ASME VIII-1 Table 2-5.1: suggestions of the code, not targets. */
export interface GasketFactorRow {
  readonly family: string;
  readonly wording: string;
  readonly material: string;
  readonly m: number;
  readonly y_MPa: number;
  readonly source: string;
}

const factorRows: readonly GasketFactorRow[] = tableRows(ASME_VIII_GASKET_FACTORS).map((row) => ({
  family: textIn(row, 'family'),
  wording: textIn(row, 'wording'),
  material: textIn(row, 'material'),
  m: requiredNumberIn(row, 'm'),
  y_MPa: requiredNumberIn(row, 'y_MPa'),
  source: citation(ASME_VIII_GASKET_FACTORS),
}));

/** Code factors m and y of a family; empty where the table has no row for it (PTFE, graphite, isolation kits). */
export function gasketFactors(family: string): readonly GasketFactorRow[] {
  return factorRows.filter((row) => row.family === family);
}

export interface GasketDimensions {
  readonly contactInside_mm: number;
  readonly contactOutside_mm: number;
  readonly innerRingInside_mm?: number;
  readonly outerRingOutside_mm?: number;
  readonly thickness_mm: number;
  readonly gasketStandard: string;
  readonly basis: string;
  readonly source: string;
  readonly confidence: string;
}

const TABLES: Readonly<Record<string, SourcedTable>> = {
  'ASME-B16.5': GASKET_DIMENSIONS_ASME_B16_5,
  'ASME-B16.47-A': GASKET_DIMENSIONS_ASME_B16_47,
  'ASME-B16.47-B': GASKET_DIMENSIONS_ASME_B16_47,
  'EN-1092-1': GASKET_DIMENSIONS_EN_1092_1,
};

const parsed = new Map<SourcedTable, ReadonlyMap<string, GasketDimensions>>();

function rowsOf(table: SourcedTable): ReadonlyMap<string, GasketDimensions> {
  let rows = parsed.get(table);
  if (rows === undefined) {
    rows = new Map(
      tableRows(table).map((row) => {
        const inner = numberIn(row, 'innerRingInside_mm');
        const outer = numberIn(row, 'outerRingOutside_mm');
        const dimensions: GasketDimensions = {
          contactInside_mm: requiredNumberIn(row, 'contactInside_mm'),
          contactOutside_mm: requiredNumberIn(row, 'contactOutside_mm'),
          ...(inner === undefined ? {} : { innerRingInside_mm: inner }),
          ...(outer === undefined ? {} : { outerRingOutside_mm: outer }),
          thickness_mm: requiredNumberIn(row, 'thickness_mm'),
          gasketStandard: table.standard,
          basis: textIn(row, 'basis'),
          source: citation(table),
          confidence: table.confidence,
        };
        const key = ['standard', 'size', 'rating', 'form'].map((column) => textIn(row, column)).join(' ');
        return [key, dimensions] as const;
      }),
    );
    parsed.set(table, rows);
  }
  return rows;
}

/**
 * Dimensions of the gasket of a standard flange.
 *
 * Source: ASME B16.20, B16.21, EN 1514-1, EN 1514-2 (tables of this package).
 * @param input.family code of the family; only spiral wound and sheet gaskets have standard dimensions here
 * @throws CalcRefusal `gasket-dimensions-missing`, `ring-groove-data-missing` for a ring joint, and the key refusals of
 *   findFlange
 */
export function gasketDimensions(input: {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  readonly family: string;
}): GasketDimensions {
  // Refuses with the number of the ring, whose dimensions are entered.
  if (input.family === 'ring-joint') ringJoint({ flange: input });
  const found = findGasketDimensions(input);
  if (found === undefined) {
    refuse(
      'gasket',
      'gasket-dimensions-missing',
      `No dimensions of a ${input.family} gasket for ${input.standard} ${input.size} ${input.rating} are in the tables. Enter the contact diameters of the maker.`,
    );
  }
  return found;
}

/** As gasketDimensions, undefined where the tables have none, custom flanges included. */
export function findGasketDimensions(input: {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  readonly family: string;
}): GasketDimensions | undefined {
  const form = gasketFamily(input.family)?.form;
  if (form === undefined || input.standard === 'custom') return undefined;
  const standard = flangeStandard(input.standard);
  const table = TABLES[standard];
  if (table === undefined) return undefined;
  return rowsOf(table).get(`${standard} ${flangeSize(input.size)} ${flangeRating(input.rating)} ${form}`);
}
