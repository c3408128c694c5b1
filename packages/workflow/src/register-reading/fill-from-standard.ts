import { pairedSize } from './nominal-sizes.ts';
import { type FlangeStandard, largeSeries } from './standard.ts';

/** Bolting of a flange by its standard, or why there is none. */
export type FlangeAnswer =
  | { readonly found: true; readonly boltCount: number; readonly boltThread: string }
  | { readonly found: false; readonly code: string; readonly message: string; readonly boltCounts?: readonly number[] };

/**
 * Looks up a flange of a standard by the keys of the calculation. Where the standard leaves the bolt count open
 * (EN 1092-1 DN 65) and none is given, it answers `bolt-count-must-be-given` with the counts there are.
 */
export type LookupFlange = (standard: string, size: string, rating: string, boltCount?: number) => FlangeAnswer;

/** The standard of a flange whose register names none, by its rating and size. */
export type StandardByRating =
  | { readonly standard: FlangeStandard }
  | { readonly choices: typeof largeSeries }
  | undefined;

/** The size key in the naming of a standard: ASME by NPS, EN by DN. Undefined where the size has no such name. */
export function sizeForStandard(standard: FlangeStandard, size: string): string | undefined {
  const wanted = standard === 'EN-1092-1' ? 'DN' : 'NPS';
  return size.startsWith(wanted) ? size : pairedSize(size);
}

/**
 * Which standard a flange has, where the row names none: PN is EN 1092-1; a class up to NPS 24 is ASME B16.5,
 * above it ASME B16.47, whose series has to be asked. The default of the import goes first where it can apply.
 */
export function standardByRating(size: string, rating: string, preferred?: FlangeStandard): StandardByRating {
  if (rating.startsWith('PN')) return { standard: 'EN-1092-1' };
  const nps = Number(sizeForStandard('ASME-B16.5', size)?.slice(3));
  if (!Number.isFinite(nps)) return undefined;
  if (nps <= 24) return { standard: 'ASME-B16.5' };
  if (preferred === 'ASME-B16.47-A' || preferred === 'ASME-B16.47-B') return { standard: preferred };
  return { choices: largeSeries };
}

/** One written form of a thread, so that `1-1/8-8 UN` and `1 1/8-8 UN` compare equal. */
export function comparableThread(thread: string): string {
  return thread
    .toUpperCase()
    .replace(/^(\d+)[ -](\d+\/)/, '$1 $2')
    .replace(/\s+/g, ' ')
    .trim();
}
