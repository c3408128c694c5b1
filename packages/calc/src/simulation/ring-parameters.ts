import { type FlangeStandard, flangeRating, flangeSize, flangeStandard } from '../flanges/keys.ts';
import { requiredNumberIn, type SourcedTable, tableRows, textIn } from '../tables/sourced-table.ts';
import { RINGS_ASME_B16_5 } from './tables/rings-asme-b16-5.ts';
import { RINGS_ASME_B16_47_A } from './tables/rings-asme-b16-47-a.ts';
import { RINGS_ASME_B16_47_B } from './tables/rings-asme-b16-47-b.ts';
import { RINGS_EN_1092_1 } from './tables/rings-en-1092-1.ts';

/** What is bolted to the weld-neck flange. */
export type PairKind = 'weld-neck-pair' | 'weld-neck-to-blind';

/** Numbers of the equivalent ring per flange; a pair uses EI/2, GJ/2 and twice the compliances. */
export interface RingPerFlange {
  readonly R_mm: number;
  readonly EI_Nmm2: number;
  readonly GJ_Nmm2: number;
  readonly cBolt_mm_per_N: number;
  readonly cGasket_mm3_per_N: number;
}

/** A row of the ring tables. */
export interface RingRow extends RingPerFlange {
  /** Interaction number and nearest neighbour of the ring, in the conditions of the fit. */
  readonly interaction: number;
  readonly neighbour: number;
  readonly boltCount: number;
  readonly boltCircle_mm: number;
  readonly gasketInside_mm: number;
  readonly gasketOutside_mm: number;
  readonly bore_mm: number;
  readonly quality: 'good' | 'fair' | 'poor';
  readonly note: string;
  readonly source: string;
}

const TABLES: Readonly<Record<FlangeStandard, SourcedTable>> = {
  'ASME-B16.5': RINGS_ASME_B16_5,
  'ASME-B16.47-A': RINGS_ASME_B16_47_A,
  'ASME-B16.47-B': RINGS_ASME_B16_47_B,
  'EN-1092-1': RINGS_EN_1092_1,
};

const parsed = new Map<FlangeStandard, ReadonlyMap<string, RingRow>>();

function rowsOf(standard: FlangeStandard): ReadonlyMap<string, RingRow> {
  const known = parsed.get(standard);
  if (known !== undefined) return known;
  const table = TABLES[standard];
  const rows = new Map(
    tableRows(table).map((cells): [string, RingRow] => {
      const number = (column: string) => requiredNumberIn(cells, column);
      const row: RingRow = {
        R_mm: number('R_mm'),
        EI_Nmm2: number('EI_Nmm2'),
        GJ_Nmm2: number('GJ_Nmm2'),
        cBolt_mm_per_N: number('cBolt_mm_per_N'),
        cGasket_mm3_per_N: number('cGasket_mm3_per_N'),
        interaction: number('S'),
        neighbour: number('alpha1'),
        boltCount: number('bolts'),
        boltCircle_mm: 2 * number('boltCircleRadius_mm'),
        gasketInside_mm: 2 * number('gasketInnerRadius_mm'),
        gasketOutside_mm: 2 * number('gasketOuterRadius_mm'),
        bore_mm: number('bore_mm'),
        quality: qualityOf(textIn(cells, 'quality')),
        note: textIn(cells, 'note'),
        source: `${table.table}, ${table.held}; ${table.statement}`,
      };
      return [`${textIn(cells, 'size')} ${textIn(cells, 'rating')} ${textIn(cells, 'kind')}`, row];
    }),
  );
  parsed.set(standard, rows);
  return rows;
}

function qualityOf(text: string): RingRow['quality'] {
  if (text === 'good' || text === 'fair' || text === 'poor') return text;
  throw new Error(`The ring tables have no quality "${text}".`);
}

/**
 * Ring of a standard flange, per flange; undefined when the flange is not in the tables.
 * @throws CalcRefusal `unknown-standard`, `unknown-size`, `unknown-rating`
 */
export function findRing(
  key: { readonly standard: string; readonly size: string; readonly rating: string },
  kind: PairKind,
): RingRow | undefined {
  const rows = rowsOf(flangeStandard(key.standard));
  const column = kind === 'weld-neck-pair' ? 'pair' : 'blind';
  return rows.get(`${flangeSize(key.size)} ${flangeRating(key.rating)} ${column}`);
}

/** Keys of all rings of a standard: size, rating and kind. */
export function listRings(standard: string): readonly { size: string; rating: string; kind: PairKind }[] {
  return [...rowsOf(flangeStandard(standard)).keys()].map((key) => {
    const [size = '', rating = '', column] = key.split(' ');
    return { size, rating, kind: column === 'pair' ? 'weld-neck-pair' : 'weld-neck-to-blind' };
  });
}
