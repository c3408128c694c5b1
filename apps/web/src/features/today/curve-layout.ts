import type { TodayAnswer } from '@seatwell/contract';

type Curve = TodayAnswer['curve'];
type Point = Curve['plan'][number];

/** Paths of the curve in a box, ready to be drawn. */
export interface CurveLayout {
  readonly width: number;
  readonly height: number;
  readonly baseline: number;
  readonly plan: string;
  readonly actual: string;
  readonly end: { readonly x: number; readonly y: number } | undefined;
  readonly days: readonly string[];
}

/**
 * Lays the two curves out: days from left to right, joints from the foot up.
 * @param total joints in all: the top of the drawing
 */
export function layOutCurve({ plan, actual }: Curve, total: number, size: { width: number; height: number }) {
  const days = [...new Set([...plan, ...actual].map((point) => point.day))].sort();
  const top = 8;
  const baseline = size.height - 2;
  const most = Math.max(1, total, ...plan.map((point) => point.count), ...actual.map((point) => point.count));
  const place = (point: Point) => ({
    x: days.length < 2 ? 0 : (days.indexOf(point.day) / (days.length - 1)) * size.width,
    y: baseline - (point.count / most) * (baseline - top),
  });
  const path = (points: readonly Point[]) =>
    points
      .map(place)
      .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
      .join('');
  const last = actual.at(-1);
  const layout: CurveLayout = {
    ...size,
    baseline,
    plan: path(plan),
    actual: path(actual),
    end: last ? place(last) : undefined,
    days,
  };
  return layout;
}
