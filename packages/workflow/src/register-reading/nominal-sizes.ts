/**
 * Nominal pipe sizes with the DN of the same pipe, as ASME B36.10M / B16.5 / B16.47 pair them
 * (from memory of the standards; the pairs of NPS 1/2 to 60 agree with the flange tables).
 */
const pairs: readonly (readonly [nps: number, dn: number])[] = [
  [0.125, 6],
  [0.25, 8],
  [0.375, 10],
  [0.5, 15],
  [0.75, 20],
  [1, 25],
  [1.25, 32],
  [1.5, 40],
  [2, 50],
  [2.5, 65],
  [3, 80],
  [3.5, 90],
  [4, 100],
  [5, 125],
  [6, 150],
  [8, 200],
  [10, 250],
  [12, 300],
  [14, 350],
  [16, 400],
  [18, 450],
  [20, 500],
  [22, 550],
  [24, 600],
  ...Array.from({ length: 18 }, (_, step) => [26 + 2 * step, 650 + 50 * step] as const),
];

/** Every NPS that a register may name, in inches. */
export const nominalPipeSizes: readonly number[] = pairs.map(([nps]) => nps);

/** Every DN that a register may name: those paired with an NPS and the large ones of ISO 6708. */
export const nominalDiameters: readonly number[] = [
  ...new Set([...pairs.map(([, dn]) => dn), 1600, 1800, 2000, 2200, 2400, 2600, 2800, 3000]),
];

const dnOfNps = new Map(pairs);
const npsOfDn = new Map(pairs.map(([nps, dn]) => [dn, nps] as const));

/** Size key of a pipe in the other naming: `NPS1.5` ↔ `DN40`; undefined where no pair exists. */
export function pairedSize(size: string): string | undefined {
  if (size.startsWith('NPS')) {
    const dn = dnOfNps.get(Number(size.slice(3)));
    return dn === undefined ? undefined : `DN${dn}`;
  }
  const nps = npsOfDn.get(Number(size.slice(2)));
  return nps === undefined ? undefined : `NPS${nps}`;
}

/** The two entries of a sorted list that lie around a value: what a message offers as nearest. */
export function nearest(list: readonly number[], value: number): readonly number[] {
  const below = list.filter((entry) => entry < value).at(-1);
  const above = list.find((entry) => entry > value);
  return [below, above].filter((entry) => entry !== undefined);
}
