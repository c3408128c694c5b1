import { numberIn, requiredNumberIn, type SourcedTable, tableRows, textIn } from '../tables/sourced-table.ts';
import type { FlangeStandard } from './keys.ts';
import { ASME_B16_5 } from './tables/asme-b16-5.ts';
import { ASME_B16_47_A } from './tables/asme-b16-47-a.ts';
import { ASME_B16_47_B } from './tables/asme-b16-47-b.ts';
import { EN_1092_1 } from './tables/en-1092-1.ts';

export interface FlangeRow {
  readonly rating: string;
  readonly size: string;
  readonly boltCount: number;
  readonly boltThread: string;
  readonly boltHole_mm: number;
  readonly boltCircle_mm: number;
  readonly outsideDiameter_mm: number;
  readonly thickness_mm: number | undefined;
  readonly raisedFaceDiameter_mm: number;
  readonly raisedFaceHeight_mm: number | undefined;
  readonly ringGroove: string;
  readonly studLength_mm: number | undefined;
  readonly studLengthRingJoint_mm: number | undefined;
  readonly sourcesAgreeing: number;
  readonly note: string;
}

const TABLES: Readonly<Record<FlangeStandard, SourcedTable>> = {
  'ASME-B16.5': ASME_B16_5,
  'ASME-B16.47-A': ASME_B16_47_A,
  'ASME-B16.47-B': ASME_B16_47_B,
  'EN-1092-1': EN_1092_1,
};

/** The table that holds a standard. */
export function flangeTable(standard: FlangeStandard): SourcedTable {
  return TABLES[standard];
}

const parsed = new Map<FlangeStandard, ReadonlyMap<string, FlangeRow>>();

/** Rows of a standard by `size rating`, parsed on first use. */
export function flangeRows(standard: FlangeStandard): ReadonlyMap<string, FlangeRow> {
  let rows = parsed.get(standard);
  if (rows === undefined) {
    rows = new Map(
      tableRows(TABLES[standard]).map((cells) => {
        const optional = (column: string) => (column in cells ? numberIn(cells, column) : undefined);
        const row: FlangeRow = {
          rating: textIn(cells, 'rating'),
          size: textIn(cells, 'size'),
          boltCount: requiredNumberIn(cells, 'boltCount'),
          boltThread: textIn(cells, 'boltThread'),
          boltHole_mm: requiredNumberIn(cells, 'boltHole_mm'),
          boltCircle_mm: requiredNumberIn(cells, 'boltCircle_mm'),
          outsideDiameter_mm: requiredNumberIn(cells, 'outsideDiameter_mm'),
          thickness_mm: numberIn(cells, 'thickness_mm'),
          raisedFaceDiameter_mm: requiredNumberIn(cells, 'raisedFaceDiameter_mm'),
          raisedFaceHeight_mm: optional('raisedFaceHeight_mm'),
          ringGroove: cells.ringGroove ?? '',
          studLength_mm: optional('studLength_mm'),
          studLengthRingJoint_mm: optional('studLengthRingJoint_mm'),
          sourcesAgreeing: requiredNumberIn(cells, 'sourcesAgreeing'),
          note: textIn(cells, 'note'),
        };
        return [`${row.size} ${row.rating}`, row] as const;
      }),
    );
    parsed.set(standard, rows);
  }
  return rows;
}
