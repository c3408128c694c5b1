/**
 * Which loads may share a set value: any alike, or only those in a row, so that the tool is set anew no more often than
 * there are values.
 */
export type GroupingWay = 'by-value' | 'in-a-row';

/** Tool loads brought to a few set values. */
export interface GroupedLoads {
  /** Set values; rising where they were grouped by value. */
  readonly values: readonly number[];
  /** Index of the set value of each load. */
  readonly group: readonly number[];
}

/** Rounds a load to the tool's division; down where rounding would pass the cap. */
export function roundToDivision(load: number, division: number, cap = Infinity): number {
  const rounded = Math.round(load / division) * division;
  return rounded > cap ? Math.floor(cap / division) * division : Math.max(division, rounded);
}

/**
 * Groups loads into at most `count` set values with the least sum of squares (dynamic programme over the loads,
 * sorted by value or left in their order of working), each rounded to the tool's division and kept under the cap.
 */
export function groupLoads(
  loads: readonly number[],
  count: number,
  division: number,
  cap: number,
  way: GroupingWay = 'by-value',
): GroupedLoads {
  const order = loads.map((_, i) => i);
  if (way === 'by-value') order.sort((a, b) => loads[a]! - loads[b]!);
  const sorted = order.map((i) => loads[i]!);
  const n = sorted.length;
  const sums = [0];
  const squares = [0];
  for (const load of sorted) {
    sums.push(sums.at(-1)! + load);
    squares.push(squares.at(-1)! + load * load);
  }
  const spread = (from: number, to: number) => {
    const sum = sums[to]! - sums[from]!;
    return squares[to]! - squares[from]! - (sum * sum) / (to - from);
  };
  const most = Math.min(count, n);
  let cost = Array.from({ length: n + 1 }, (_, to) => (to === 0 ? 0 : spread(0, to)));
  const cuts: number[][] = [];
  for (let groups = 2; groups <= most; groups++) {
    const next = [...cost];
    const cut = new Array<number>(n + 1).fill(0);
    for (let to = groups; to <= n; to++)
      for (let from = groups - 1; from < to; from++) {
        const total = cost[from]! + spread(from, to);
        if (total < next[to]!) {
          next[to] = total;
          cut[to] = from;
        }
      }
    cost = next;
    cuts.push(cut);
  }
  const bounds = [n];
  for (let level = cuts.length - 1; level >= 0 && bounds[0]! > 0; level--) bounds.unshift(cuts[level]![bounds[0]!]!);
  if (bounds[0] !== 0) bounds.unshift(0);
  const values: number[] = [];
  const group = new Array<number>(n).fill(0);
  for (let k = 0; k + 1 < bounds.length; k++) {
    const from = bounds[k]!;
    const to = bounds[k + 1]!;
    if (to === from) continue;
    const value = roundToDivision((sums[to]! - sums[from]!) / (to - from), division, cap);
    if (values.at(-1) !== value) values.push(value);
    for (let i = from; i < to; i++) group[order[i]!] = values.length - 1;
  }
  return { values, group };
}
