import { type PlanLayout, type Point, pointAt } from './layout.ts';

/** Where a number of a dense plan stands, and how far it is turned, degrees clockwise. */
export interface PlacedLabel {
  readonly at: Point;
  readonly turn_deg: number;
}

export interface PlacedLabels {
  readonly size: number;
  readonly labels: readonly PlacedLabel[];
}

// Width of the family's digits, and the air to the next number.
const digitWidth = 0.6;
const labelAir = 0.35;

const largest = (width: number) => Math.max(10, width * 0.03);

/** Level numbers on two rings in turn, as on the screen; null where neighbours would touch at a readable size. */
function level(layout: PlanLayout, angles: readonly number[], digits: number, width: number): PlacedLabels | null {
  for (let size = largest(width); size >= largest(width) * 0.8; size *= 0.95) {
    const wide = (digits * digitWidth + labelAir) * size;
    const places = angles.map((angle, index) => {
      const inner = index % 2 === 1 ? size * 1.15 : 0;
      const clear = (wide / 2) * Math.abs(Math.sin(angle)) + (size / 2) * Math.abs(Math.cos(angle));
      return pointAt(layout, angle, layout.boltCircle - layout.boltRadius - size * 0.15 - clear - inner);
    });
    const apart = (one: Point, other: Point) =>
      Math.abs(one.x - other.x) >= wide || Math.abs(one.y - other.y) >= size * 1.05;
    const clear = places.every((place, index) =>
      [1, 2, 3].every((away) => apart(place, places[(index + away) % places.length] ?? place)),
    );
    if (clear) return { size, labels: places.map((at) => ({ at, turn_deg: 0 })) };
  }
  return null;
}

/** Numbers along the radius, the widest count of rings that keeps the largest size; never upside down. */
function radial(layout: PlanLayout, angles: readonly number[], digits: number, width: number): PlacedLabels {
  const outer = layout.boltCircle - layout.boltRadius;
  const fitting = [1, 2, 3].flatMap((rings) => {
    // The last bolt stands beside the first: only rings that divide the count keep them apart.
    if (angles.length % rings !== 0) return [];
    const long = digits * digitWidth + labelAir;
    // The innermost ring has the least room: its numbers stand `size` apart, and outside the bore.
    const byPitch = outer / (angles.length / (2 * Math.PI * rings) + rings * long);
    const byDepth = (outer - layout.bore) / (rings * long);
    return [{ rings, size: Math.min(largest(width), byPitch, byDepth) }];
  });
  const best = fitting.reduce((most, each) => (each.size > most.size * 1.05 ? each : most));
  const long = (digits * digitWidth + labelAir) * best.size;
  const labels = angles.map((angle, index) => {
    const at = pointAt(layout, angle, outer - best.size * 0.15 - long * ((index % best.rings) + 0.5));
    const outward = ((((angle * 180) / Math.PI) % 360) + 360) % 360;
    return { at, turn_deg: outward < 180 ? outward - 90 : outward - 270 };
  });
  return { size: best.size, labels };
}

/**
 * Where the numbers stand when a dense plan numbers every bolt: inside the bolt circle, level while that can be read,
 * along the radius when there are more.
 * @param angles of the bolts in the order of their places, radians clockwise from the top
 * @param digits of the longest number
 * @param width of the drawing
 */
export const placeEveryLabel = (
  layout: PlanLayout,
  angles: readonly number[],
  digits: number,
  width: number,
): PlacedLabels => level(layout, angles, digits, width) ?? radial(layout, angles, digits, width);
