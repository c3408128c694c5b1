/**
 * The legacy cross pattern, clockwise bolt numbers in tightening order.
 * ASME PCC-1-2013 and 2019, Table 4 (from memory). A 20-bolt order different from this one is also in use;
 * both keep the quadrant property.
 */
export const LEGACY_ORDERS: Readonly<Record<number, readonly number[]>> = {
  4: [1, 3, 2, 4],
  8: [1, 5, 3, 7, 2, 6, 4, 8],
  12: [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
  16: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
  20: [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19],
  24: [1, 13, 7, 19, 4, 16, 10, 22, 2, 14, 8, 20, 5, 17, 11, 23, 3, 15, 9, 21, 6, 18, 12, 24],
};

/** First bolt (from zero) of each of four arcs that divide the circle as evenly as the count allows. */
function quarterStarts(count: number): readonly number[] {
  return [0, 1, 2, 3].map((quarter) => Math.floor((quarter * count) / 4 + 0.5));
}

/** Places of a quarter in an order that keeps neighbouring fours apart. */
function spreadPlaces(places: number): readonly number[] {
  const all = Array.from({ length: places }, (_, place) => place);
  if (places % 2 === 0) {
    const half = places / 2;
    return Array.from({ length: half }, (_, i) => [i, i + half]).flat();
  }
  return [...all.filter((place) => place % 2 === 0), ...all.filter((place) => place % 2 === 1)];
}

/** Opposite arcs follow each other, then the arcs between them. */
const ARC_ORDER = [0, 2, 1, 3];

function byQuarters(count: number, places: (full: number) => readonly number[]): readonly number[] {
  const starts = quarterStarts(count);
  const length = (arc: number) => (starts[arc + 1] ?? count) - (starts[arc] ?? 0);
  const full = Math.floor(count / 4);
  const order: number[] = [];
  for (const place of [...places(full), full]) {
    for (const arc of ARC_ORDER) if (place < length(arc)) order.push((starts[arc] ?? 0) + place + 1);
  }
  return order;
}

/**
 * Cross order by our own rule, for any count from 4: each four spans the quadrants, opposite bolts follow each
 * other (the nearest to opposite when the count is odd), neighbouring fours are kept apart where there is room.
 * It reproduces the listed orders of 4, 8, 16, 20 and 24.
 */
export function ruleOrder(count: number): readonly number[] {
  return byQuarters(count, spreadPlaces);
}

/** The legacy cross order: the listed one where there is a list, else our rule. */
export function crossOrder(count: number): {
  readonly order: readonly number[];
  readonly listed: boolean;
} {
  const listed = LEGACY_ORDERS[count];
  return listed === undefined ? { order: ruleOrder(count), listed: false } : { order: listed, listed: true };
}

/**
 * Quadrant order: one bolt in each quadrant, opposite first, then the next bolt of each, stepping round.
 * ASME PCC-1-2013 and 2019, appendix on alternative patterns (from memory).
 */
export function quadrantOrder(count: number): readonly number[] {
  return byQuarters(count, (full) => Array.from({ length: full }, (_, place) => place));
}

/** Sets of bolts under tools spaced as evenly as the count allows; set k is the k-th bolt of every arc. */
export function toolSets(count: number, tools: number): readonly (readonly number[])[] {
  const starts = Array.from({ length: tools + 1 }, (_, tool) => Math.ceil((tool * count) / tools));
  return Array.from({ length: Math.ceil(count / tools) }, (_, place) =>
    starts
      .slice(0, -1)
      .map((start, tool) => ({
        bolt: start + place,
        end: starts[tool + 1] ?? count,
      }))
      .filter(({ bolt, end }) => bolt < end)
      .map(({ bolt }) => bolt + 1),
  );
}

/** Order in which tool sets are visited so that neighbouring sets do not follow each other. */
export function spreadSets(sets: number): readonly number[] {
  return spreadPlaces(sets);
}
