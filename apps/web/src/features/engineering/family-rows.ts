import { CalcRefusal, type RefusalItem, type TargetTableRow, targetTable } from '@seatwell/calc';
import type { GasketDataAnswer, LubricantsAnswer, ProcedureContent, SitePayload } from '@seatwell/contract';
import { procedureBolting } from '@seatwell/workflow';

export interface Family {
  readonly standard: string;
  readonly ratings: readonly string[];
  readonly grade: string;
  readonly procedure: ProcedureContent;
  readonly gasket: GasketDataAnswer['rows'][number]['content'];
  readonly lubricant: LubricantsAnswer['rows'][number]['content'];
  readonly pressure_MPa: number;
  readonly temperature_C: number;
}

/** One calculation for every size of a family; a size that is not covered says why. */
export function familyRows(family: Family): readonly TargetTableRow[] | { readonly refused: readonly RefusalItem[] } {
  const { procedure, gasket, lubricant } = family;
  const wanted = procedure.policy.targetBoltStress_MPa;
  try {
    return targetTable({
      standard: family.standard,
      ...(family.ratings.length === 0 ? {} : { ratings: family.ratings }),
      common: {
        bolting: {
          grade: family.grade,
          condition: procedure.bolts?.condition ?? 'new',
          ...procedureBolting(procedure.bolts),
        },
        service: { pressure_MPa: family.pressure_MPa, temperature_C: family.temperature_C },
        lubricant: { nutFactor: lubricant.nutFactor, source: lubricant.source },
        method: procedure.method,
        area: procedure.policy.area,
        policy: {
          minimumBoltUtilisation: procedure.policy.minimumBoltUtilisation,
          maximumBoltUtilisation: procedure.policy.maximumBoltUtilisation,
          scatter_percent: procedure.policy.scatter_percent,
        },
        passPercents: procedure.passPercents,
        ...(wanted === null ? {} : { target: { boltStress_MPa: wanted } }),
      },
      gasket: {
        family: gasket.family,
        limits: {
          seating_MPa: gasket.seating_MPa,
          operating_MPa: gasket.operating_MPa,
          target_MPa: gasket.target_MPa,
          maximum_MPa: gasket.maximum_MPa,
          source: gasket.source,
        },
      },
    });
  } catch (error) {
    if (error instanceof CalcRefusal) return { refused: error.errors };
    throw error;
  }
}

/** The rows to approve: those with a window, and those without only where the engineer gives a reason. */
export function approvable(
  standard: string,
  rows: readonly TargetTableRow[],
  shortfall: string,
): SitePayload<'target-table-approved'>['rows'] {
  return rows.flatMap((row) => {
    if ('refused' in row || (!row.windowOpen && shortfall === '')) return [];
    const { size, rating, boltStress_MPa } = row;
    return [{ standard, size, rating, boltStress_MPa, acceptedShortfall: row.windowOpen ? null : shortfall }];
  });
}
