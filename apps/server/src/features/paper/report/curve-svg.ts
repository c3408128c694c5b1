import type { TodayAnswer } from '@seatwell/contract';
import type { PaperFigures } from '../paper-figures.ts';

const WIDTH = 500;
const HEIGHT = 150;
const LEFT = 34;
const BOTTOM = 18;
const TOP = 8;
const RIGHT = 10;
const FONT = 'Atkinson Hyperlegible Next';

type Curve = TodayAnswer['curve'];

/** A round step that divides the axis into at most five. */
function stepOf(most: number): number {
  const rough = Math.max(1, most / 4);
  const power = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5, 10].find((each) => each * power >= rough) ?? 10) * power;
}

/**
 * Tight joints at the end of each day against the plan, for print in black and white: the plan broken, what is tight
 * full and heavier. Time runs from left to right in every language, as in the plan.
 * @returns an SVG element with presentation attributes only
 */
export function curveSvg({ plan, actual }: Curve, today: string, { shortDay, plain }: PaperFigures): string {
  const most = Math.max(1, ...plan.map(({ count }) => count), ...actual.map(({ count }) => count));
  const step = stepOf(most);
  const top = Math.ceil(most / step) * step;
  const x = (index: number) => LEFT + (index / Math.max(1, plan.length - 1)) * (WIDTH - LEFT - RIGHT);
  const y = (count: number) => HEIGHT - BOTTOM - (count / top) * (HEIGHT - BOTTOM - TOP);
  const at = (value: number) => value.toFixed(1);
  const points = (line: Curve['plan']) => line.map(({ count }, index) => `${at(x(index))},${at(y(count))}`).join(' ');
  const text = (px: number, py: number, words: string, anchor: string) =>
    `<text x="${at(px)}" y="${at(py)}" font-size="8" font-family="${FONT}" text-anchor="${anchor}" fill="black">${words}</text>`;
  const rules = Array.from({ length: Math.round(top / step) + 1 }, (_, index) => index * step).map(
    (count) =>
      `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${at(y(count))}" y2="${at(y(count))}" stroke="black" stroke-width="${count === 0 ? 0.8 : 0.25}"/>${text(LEFT - 4, y(count) + 3, plain(count), 'end')}`,
  );
  const every = Math.max(1, Math.ceil(plan.length / 12));
  const days = plan.flatMap(({ day }, index) =>
    index % every === 0 ? [text(x(index), HEIGHT - 5, shortDay(day), 'middle')] : [],
  );
  const now = plan.findIndex(({ day }) => day === today);
  const marker =
    now < 0
      ? ''
      : `<line x1="${at(x(now))}" x2="${at(x(now))}" y1="${TOP}" y2="${HEIGHT - BOTTOM}" stroke="black" stroke-width="0.6" stroke-dasharray="1 2"/>`;
  const last = actual.at(-1);
  const end = last
    ? `<circle cx="${at(x(actual.length - 1))}" cy="${at(y(last.count))}" r="2.6" fill="black"/>${text(x(actual.length - 1) + 5, y(last.count) + 10, plain(last.count), 'start')}`
    : '';
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}">${rules.join('')}${days.join('')}${marker}<polyline points="${points(plan)}" fill="none" stroke="black" stroke-width="1.1" stroke-dasharray="5 3"/><polyline points="${points(actual)}" fill="none" stroke="black" stroke-width="2.4"/>${end}</svg>`;
}
