import { POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import { citation, requiredNumberIn, tableRows, textIn } from '../tables/sourced-table.ts';
import { inchFraction, parseThread } from '../threads/designation.ts';
import type { Warning } from '../working.ts';
import { WASHERS } from './tables/washers.ts';

export interface Washer {
  readonly insideDiameter_mm: number;
  readonly outsideDiameter_mm: number;
  readonly thickness_mm: number;
  readonly source: string;
}

const rows: ReadonlyMap<string, Washer> = new Map(
  tableRows(WASHERS).map((row) => [
    textIn(row, 'size'),
    {
      insideDiameter_mm: requiredNumberIn(row, 'insideDiameter_mm'),
      outsideDiameter_mm: requiredNumberIn(row, 'outsideDiameter_mm'),
      thickness_mm: requiredNumberIn(row, 'thickness_mm'),
      source: citation(WASHERS),
    },
  ]),
);

/**
 * The hardened washer of a thread; undefined where the table has none.
 *
 * Source: ISO 7089, ASTM F436 (table of this package, from memory).
 */
export function findWasher(input: { readonly thread: string }): Washer | undefined {
  const { nominalDiameter_in, nominalDiameter_mm } = parseThread(input.thread);
  return rows.get(nominalDiameter_in === undefined ? `M${nominalDiameter_mm}` : inchFraction(nominalDiameter_in));
}

/**
 * Dimensions of a washer: entered ones first, then those of the table, which is from memory and says so.
 * @throws CalcRefusal `washer-data-missing`, `washer-impossible`, `out-of-range`
 */
export function washerOf(
  input: {
    readonly thread: string;
    readonly insideDiameter_mm?: number;
    readonly outsideDiameter_mm?: number;
    readonly thickness_mm?: number;
  },
  path = 'washers',
): { readonly washer: Washer; readonly warnings: readonly Warning[] } {
  requireInRange([
    [`${path}.insideDiameter_mm`, input.insideDiameter_mm, POSITIVE],
    [`${path}.outsideDiameter_mm`, input.outsideDiameter_mm, POSITIVE],
    [`${path}.thickness_mm`, input.thickness_mm, POSITIVE],
  ]);
  const table = findWasher(input);
  const insideDiameter_mm = input.insideDiameter_mm ?? table?.insideDiameter_mm;
  const outsideDiameter_mm = input.outsideDiameter_mm ?? table?.outsideDiameter_mm;
  const thickness_mm = input.thickness_mm ?? table?.thickness_mm;
  if (insideDiameter_mm === undefined || outsideDiameter_mm === undefined || thickness_mm === undefined) {
    refuse(
      path,
      'washer-data-missing',
      `No washer for ${input.thread} is in the table. Measure and give insideDiameter_mm, outsideDiameter_mm and thickness_mm.`,
    );
  }
  const { nominalDiameter_mm } = parseThread(input.thread);
  if (insideDiameter_mm < nominalDiameter_mm || outsideDiameter_mm <= insideDiameter_mm) {
    refuse(
      `${path}.insideDiameter_mm`,
      'washer-impossible',
      `A washer of ${insideDiameter_mm} mm inside and ${outsideDiameter_mm} mm outside does not go on ${input.thread} (${nominalDiameter_mm} mm). Check the diameters.`,
      nominalDiameter_mm,
    );
  }
  const entered = [input.insideDiameter_mm, input.outsideDiameter_mm, input.thickness_mm];
  const fromTable = entered.some((value) => value === undefined);
  return {
    washer: {
      insideDiameter_mm,
      outsideDiameter_mm,
      thickness_mm,
      source: fromTable && table !== undefined ? table.source : 'entered',
    },
    warnings: fromTable
      ? [
          {
            code: 'washer-from-memory',
            message: `The washer ${insideDiameter_mm}/${outsideDiameter_mm} × ${thickness_mm} mm is from a table held from memory: measure it.`,
          },
        ]
      : [],
  };
}
