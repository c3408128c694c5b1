import { findFlange, listFlangeRatings, listFlangeSizes } from '../flanges/find-flange.ts';
import { gasketDimensions } from '../gaskets/gasket-data.ts';
import { CalcRefusal } from '../refusal.ts';
import type { TargetAnswer, TargetRequest } from './request.ts';
import { targetWindow } from './target-window.ts';

/** A row of a target table, or the reason why the family's calculation does not cover the size. */
export type TargetTableRow = {
  readonly size: string;
  readonly rating: string;
} & (
  | {
      readonly boltCount: number;
      readonly boltThread: string;
      readonly acrossFlats_mm?: number;
      readonly boltStress_MPa: number;
      readonly governedBy: string;
      readonly windowOpen: boolean;
      readonly passes: TargetAnswer['passes'];
    }
  | { readonly refused: string }
);

/**
 * One calculation for a family of joints, as the table that crews use.
 *
 * @param input.common everything but flange and gasket contact, which come from the tables
 * @param input.sizes, input.ratings left out: all of the standard
 */
export function targetTable(input: {
  readonly standard: string;
  readonly sizes?: readonly string[];
  readonly ratings?: readonly string[];
  readonly common: Omit<TargetRequest, 'flange' | 'gasket' | 'clampedParts'>;
  readonly gasket: Omit<TargetRequest['gasket'], 'contactInside_mm' | 'contactOutside_mm'>;
}): readonly TargetTableRow[] {
  const rows: TargetTableRow[] = [];
  for (const size of input.sizes ?? listFlangeSizes(input.standard)) {
    for (const rating of listFlangeRatings(input.standard, size)) {
      if (input.ratings !== undefined && !input.ratings.includes(rating)) continue;
      rows.push(rowOf(input, size, rating));
    }
  }
  return rows;
}

function rowOf(input: Parameters<typeof targetTable>[0], size: string, rating: string): TargetTableRow {
  const key = { standard: input.standard, size, rating };
  try {
    const flange = findFlange(key);
    const { contactInside_mm, contactOutside_mm } = gasketDimensions({ ...key, family: input.gasket.family });
    const answer = targetWindow({
      ...input.common,
      flange: key,
      gasket: { ...input.gasket, contactInside_mm, contactOutside_mm },
    });
    const { acrossFlats_mm } = answer.tool;
    return {
      size,
      rating,
      boltCount: flange.boltCount,
      boltThread: flange.boltThread,
      ...(acrossFlats_mm === undefined ? {} : { acrossFlats_mm }),
      boltStress_MPa: answer.target.boltStress_MPa,
      governedBy: answer.target.governedBy,
      windowOpen: answer.window.open,
      passes: answer.passes,
    };
  } catch (error) {
    if (error instanceof CalcRefusal) return { size, rating, refused: error.message };
    throw error;
  }
}
