import type { ProcedureBolts } from '@seatwell/contract';

/** The bolts of a procedure as the calculation takes them: it knows no null. */
export interface ProcedureBolting {
  readonly coating?: string;
  readonly coatingMaximum_C?: number;
  readonly coatingSource?: string;
  readonly washers?: {
    readonly perBolt: 1 | 2;
    readonly insideDiameter_mm?: number;
    readonly outsideDiameter_mm?: number;
    readonly thickness_mm?: number;
  };
  readonly elasticModulus_MPa?: number;
}

/** What is given, under its name: null and undefined are left out. */
export const given = <Name extends string, Value>(
  name: Name,
  value: Value | null | undefined,
): { readonly [N in Name]?: Value } =>
  (value === null || value === undefined ? {} : { [name]: value }) as { readonly [N in Name]?: Value };

/** What a procedure says of its bolts, for a calculation; what it leaves open is left out. */
export function procedureBolting(bolts: ProcedureBolts | null | undefined): ProcedureBolting {
  const { coating, washers, material } = bolts ?? {};
  return {
    ...given('coating', coating?.name),
    ...given('coatingMaximum_C', coating?.maximum_C),
    ...given('coatingSource', coating?.source),
    ...given('elasticModulus_MPa', material?.elasticModulus_MPa),
    ...(washers
      ? {
          washers: {
            perBolt: washers.perBolt,
            ...given('insideDiameter_mm', washers.insideDiameter_mm),
            ...given('outsideDiameter_mm', washers.outsideDiameter_mm),
            ...given('thickness_mm', washers.thickness_mm),
          },
        }
      : {}),
  };
}
