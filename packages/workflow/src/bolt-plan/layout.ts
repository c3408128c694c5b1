/** A point of the drawing, y downwards. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Sizes of the drawing, all in its own units (px at the desk, pt in print). */
export interface PlanLayout {
  readonly centre: number;
  readonly rim: number;
  readonly boltCircle: number;
  readonly boltRadius: number;
  readonly face: number;
  readonly bore: number;
  /** labels do not fit into the discs */
  readonly dense: boolean;
  /** the current bolts need a large disc of their own to be read at arm's length */
  readonly crowded: boolean;
  /** radius of the discs that carry the current bolts of a dense plan, and where they stand */
  readonly calloutRadius: number;
  readonly calloutCircle: number;
}

// Below this size a digit cannot be read.
const leastFont = 10;

/** What needs room beside the bolts. */
export interface PlanDemands {
  /** loads or groups are drawn between bolts and rim */
  readonly outside: boolean;
  /** bolts that are worked on */
  readonly called: number;
}

const noDemands: PlanDemands = { outside: false, called: 0 };

/**
 * Where everything of a bolt plan stands.
 * @param size width of the drawing
 * @param boltCount bolts on the circle
 * @param more what else has to find room
 */
export function layOutPlan(size: number, boltCount: number, more: PlanDemands = noDemands): PlanLayout {
  const centre = size / 2;
  const rim = centre * 0.97;
  const boltCircle = rim * (more.outside ? 0.74 : 0.8);
  const boltRadius = Math.min(rim * (more.outside ? 0.12 : 0.155), ((Math.PI * boltCircle) / boltCount) * 0.8);
  const dense = boltRadius * 1.02 < leastFont;
  // A whole group has to stand side by side, so each of its discs is smaller.
  const calloutRadius = rim * (more.called > 3 ? 0.084 : 0.098);
  return {
    centre,
    rim,
    boltCircle,
    boltRadius,
    face: rim * (dense ? 0.5 : 0.6),
    bore: rim * 0.44,
    dense,
    crowded: boltRadius * 1.02 < size * 0.04,
    calloutRadius,
    calloutCircle: boltCircle - boltRadius - rim * 0.035 - calloutRadius,
  };
}

/** The point at an angle (radians, clockwise from the top) on a circle round the centre. */
export function pointAt(layout: PlanLayout, angle: number, radius: number): Point {
  return {
    x: layout.centre + radius * Math.sin(angle),
    y: layout.centre - radius * Math.cos(angle),
  };
}

/**
 * Every how many positions a dense plan carries a label.
 * Up to 60 bolts each has one; above, so many that at most 24 stand round the circle.
 */
export function labelStep(boltCount: number): number {
  if (boltCount <= 60) return 1;
  return [5, 10, 20, 25, 50].find((step) => boltCount / step <= 24) ?? 100;
}

/**
 * Moves angles apart until neighbours keep a distance, each as near to where it was as that allows.
 * @param angles radians, in rising order, at most one turn
 * @param distance least angle between neighbours; reduced to what fits when there are too many
 */
export function spreadAngles(angles: readonly number[], distance: number): number[] {
  const spread = [...angles];
  const count = spread.length;
  if (count < 2) return spread;
  const least = Math.min(distance, (2 * Math.PI) / count);
  for (let round = 0; round < 200; round += 1) {
    let moved = false;
    for (let index = 0; index < count; index += 1) {
      const next = (index + 1) % count;
      const gap = (spread[next] ?? 0) + (next === 0 ? 2 * Math.PI : 0) - (spread[index] ?? 0);
      const lack = least - gap;
      if (lack <= 1e-6) continue;
      spread[index] = (spread[index] ?? 0) - lack / 2;
      spread[next] = (spread[next] ?? 0) + lack / 2;
      moved = true;
    }
    if (!moved) break;
  }
  return spread;
}
