import { COATING_LIMITS } from '@seatwell/calc';
import type { ProcedureBolts, ProcedureContent } from '@seatwell/contract';

type Coating = NonNullable<ProcedureBolts['coating']>;
type Washers = NonNullable<ProcedureBolts['washers']>;

/** What is said before anything else is: new bolts, bare, without washers. */
export const emptyBolts: ProcedureBolts = { condition: 'new', coating: null, washers: null, material: null };

/** Changes the coating; without a name there is none. */
export function withCoating(bolts: ProcedureBolts, change: Partial<Coating>): ProcedureBolts {
  const coating = { maximum_C: null, source: null, name: '', ...bolts.coating, ...change };
  return { ...bolts, coating: coating.name.trim() === '' ? null : coating };
}

/** Changes the washers; none per bolt means none. */
export function withWasher(
  bolts: ProcedureBolts,
  change: Partial<Omit<Washers, 'perBolt'>> & { perBolt?: 0 | 1 | 2 },
): ProcedureBolts {
  const unmeasured = { insideDiameter_mm: null, outsideDiameter_mm: null, thickness_mm: null };
  const { perBolt, ...washers } = { perBolt: 0 as const, ...unmeasured, ...bolts.washers, ...change };
  return { ...bolts, washers: perBolt === 0 ? null : { perBolt, ...washers } };
}

/** Changes the modulus; without one nothing is said of the material. */
export function withMaterial(bolts: ProcedureBolts, elasticModulus_MPa: number | undefined): ProcedureBolts {
  if (elasticModulus_MPa === undefined) return { ...bolts, material: null };
  return { ...bolts, material: { expansion_perK: null, source: '', ...bolts.material, elasticModulus_MPa } };
}

export type BoltsMissing = 'coating-limit-needed' | 'coating-source-needed' | 'bolt-material-source-needed';

/** What the bolts of a draft still lack, the first of it. */
export function boltsMissing({ bolts }: Pick<ProcedureContent, 'bolts'>): BoltsMissing | undefined {
  const { coating, material } = bolts ?? {};
  if (coating && coating.maximum_C === null && !COATING_LIMITS.some((row) => row.coating === coating.name))
    return 'coating-limit-needed';
  if (coating && coating.maximum_C !== null && (coating.source ?? '').trim() === '') return 'coating-source-needed';
  if (material && material.source.trim() === '') return 'bolt-material-source-needed';
  return undefined;
}
