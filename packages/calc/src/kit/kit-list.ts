import { findNut } from '../bolting/nuts.ts';
import { washerOf } from '../bolting/washers.ts';
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
 * @param input.clampedParts from nut to nut, without washers; parts of kind `gasket` are counted as gaskets
 * @param input.washersPerStud hardened washers under the nuts; their thickness makes the stud longer
 * @throws CalcRefusal `unknown-thread`, `out-of-range`, `washer-data-missing`
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
  const given_mm = input.washerThickness_mm;
  const dimensions = given_mm === undefined ? {} : { thickness_mm: given_mm };
  const washer = washers === 0 ? undefined : washerOf({ thread, ...dimensions }, 'washer').washer;
  const nut = findNut({ thread });
  const length = studLength({
    thread,
    clampedParts: input.clampedParts,
    ...(nut?.height_mm === undefined ? {} : { nutHeight_mm: nut.height_mm }),
    washers_mm: washers * (washer?.thickness_mm ?? 0),
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
  if (washer !== undefined) {
    const { insideDiameter_mm, outsideDiameter_mm, thickness_mm } = washer;
    lines.push({
      item: 'washer',
      quantity: washers * input.boltCount,
      description: `for ${thread}, ${insideDiameter_mm}/${outsideDiameter_mm} × ${thickness_mm} mm`,
    });
  }
  if (nut !== undefined) {
    lines.push({
      item: 'socket',
      quantity: 1,
      description: `${Number(nut.acrossFlats_mm.toFixed(1))} mm across flats`,
    });
  }
  return lines;
}
