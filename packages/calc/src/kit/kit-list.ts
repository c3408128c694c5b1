import { findNut } from '../bolting/nuts.ts';
import { requireInRange } from '../checks.ts';
import { studLength } from '../stud-length/stud-length.ts';
import { areasOf } from '../threads/geometry.ts';

export interface KitLine {
  readonly item: 'gasket' | 'stud' | 'nut' | 'washer' | 'socket';
  readonly quantity: number;
  readonly description: string;
}

/**
 * What the store packs for a joint: gaskets, studs n × diameter × length, nuts, washers, socket size.
 *
 * @param input.clampedParts from nut to nut; parts of kind `gasket` are counted as gaskets
 * @throws CalcRefusal `unknown-thread`, `out-of-range`
 */
export function kitList(input: {
  readonly thread: string;
  readonly boltCount: number;
  readonly grade: string;
  readonly nut: string;
  readonly gasketDescription: string;
  readonly clampedParts: readonly { readonly kind: string; readonly thickness_mm: number }[];
  readonly washersPerStud?: 0 | 1 | 2;
  readonly washerThickness_mm?: number;
  readonly protrusion_mm?: number;
}): readonly KitLine[] {
  requireInRange([['boltCount', input.boltCount, { min: 4, max: 200 }]]);
  const { thread } = areasOf(input.thread);
  const washers = input.washersPerStud ?? 0;
  const nut = findNut({ thread });
  const length = studLength({
    thread,
    clampedParts: input.clampedParts,
    ...(nut?.height_mm === undefined ? {} : { nutHeight_mm: nut.height_mm }),
    washers_mm: washers * (input.washerThickness_mm ?? 0),
    ...(input.protrusion_mm === undefined ? {} : { protrusion_mm: input.protrusion_mm }),
  });
  const gaskets = input.clampedParts.filter((part) => part.kind === 'gasket').length;
  const lines: KitLine[] = [
    { item: 'gasket', quantity: gaskets, description: input.gasketDescription },
    {
      item: 'stud',
      quantity: input.boltCount,
      description: `${thread} × ${Number(length.length_mm.toFixed(1))} mm, ${input.grade}`,
    },
    { item: 'nut', quantity: 2 * input.boltCount, description: `${thread}, ${input.nut}` },
  ];
  if (washers > 0) lines.push({ item: 'washer', quantity: washers * input.boltCount, description: `for ${thread}` });
  if (nut !== undefined) {
    lines.push({
      item: 'socket',
      quantity: 1,
      description: `${Number(nut.acrossFlats_mm.toFixed(1))} mm across flats`,
    });
  }
  return lines;
}
