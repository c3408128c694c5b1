import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { parseThread } from '../threads/designation.ts';
import { areasOf } from '../threads/geometry.ts';
import { type Explainable, type Explained, explained, show, stepsFor } from '../working.ts';

export interface StudLengthRequest extends Explainable {
  readonly thread: string;
  /** Everything between the nuts: flanges with their faces, gaskets, inserts. */
  readonly clampedParts: readonly { readonly kind: string; readonly thickness_mm: number }[];
  /** Height of one nut; one diameter if not given (heavy hex). */
  readonly nutHeight_mm?: number;
  /** Both washers together. */
  readonly washers_mm?: number;
  /** Beyond one nut, for a tensioner. */
  readonly protrusion_mm?: number;
}

export interface StudLength extends Explained {
  /** Before rounding. */
  readonly exactLength_mm: number;
  /** What to order: quarter inches for inch bolting, 5 mm for metric. */
  readonly length_mm: number;
  readonly length_in?: number;
  /** Between the nuts. */
  readonly grip_mm: number;
  /** Mid-nut to mid-nut. */
  readonly effectiveLength_mm: number;
}

const INCH_MM = 25.4;

/**
 * Stud length of a stack.
 *
 * Source: ASME B16.5 annex C form, L = clamped parts + 2·(nut) + allowance; the annex's printed lengths are the
 *   nearest quarter inch of it (not the next larger), so is ours; metric to 5 mm. End points are not counted.
 * @param input.clampedParts from nut to nut, mm each; a raised face counts where the thickness excludes it
 * @throws CalcRefusal `unknown-thread`, `out-of-range`
 * Note: with a fixed nut height of one diameter, as heavy hex nuts have it.
 */
export function studLength(input: StudLengthRequest): StudLength {
  const { system } = parseThread(input.thread);
  const { nominalDiameter_mm } = areasOf(input.thread);
  requireInRange([
    ['clampedParts', input.clampedParts.length, { min: 1 }],
    ...input.clampedParts.map((part, i) => [`clampedParts.${i}.thickness_mm`, part.thickness_mm, POSITIVE] as const),
    ['nutHeight_mm', input.nutHeight_mm, POSITIVE],
    ['washers_mm', input.washers_mm, NOT_NEGATIVE],
    ['protrusion_mm', input.protrusion_mm, NOT_NEGATIVE],
  ]);
  const grip_mm = input.clampedParts.reduce((sum, part) => sum + part.thickness_mm, input.washers_mm ?? 0);
  const nut_mm = input.nutHeight_mm ?? nominalDiameter_mm;
  const exactLength_mm = grip_mm + 2 * nut_mm + (input.protrusion_mm ?? 0);
  const unit_mm = system === 'inch' ? INCH_MM / 4 : 5;
  const length_mm = Math.round(exactLength_mm / unit_mm) * unit_mm;
  const steps = stepsFor(input);
  steps?.push({
    symbol: 'L',
    meaning: 'stud length before rounding',
    formula: 'parts + washers + 2·nut + protrusion',
    substituted: `${input.clampedParts.map((part) => show(part.thickness_mm)).join(' + ')} + ${show(input.washers_mm ?? 0)} + 2 × ${show(nut_mm)} + ${show(input.protrusion_mm ?? 0)}`,
    value: exactLength_mm,
    unit: 'mm',
    source: 'ASME B16.5 annex C form',
  });
  return explained(
    {
      exactLength_mm,
      length_mm,
      ...(system === 'inch' ? { length_in: length_mm / INCH_MM } : {}),
      grip_mm,
      effectiveLength_mm: grip_mm + nut_mm,
    },
    [],
    steps,
  );
}
