import { drawingFont, drawingPalettes } from '@seatwell/workflow';
import { LOW_PERCENT, type SkippedPattern } from './skipped-pattern.ts';

const WIDTH = 480;
const HEIGHT = 150;
const TOP = 16;
const BASE = HEIGHT - 16;
const LEFT = 34;
const { ink, inkSoft, accent, rampLight } = drawingPalettes.print;

const attributes = (values: Readonly<Record<string, string | number>>) =>
  Object.entries(values)
    .map(([name, value]) => ` ${name}="${typeof value === 'number' ? Math.round(value * 100) / 100 : value}"`)
    .join('');
const element = (name: string, values: Readonly<Record<string, string | number>>, text?: string) =>
  text === undefined ? `<${name}${attributes(values)}/>` : `<${name}${attributes(values)}>${text}</${name}>`;

/** Loads of every bolt as bars with the target as a line; presentation attributes only, for screen and print alike. */
export function loadBarsSvg(loads: readonly number[], most: number, title: string): string {
  const y = (load: number) => BASE - (load / most) * (BASE - TOP);
  const step = (WIDTH - LEFT) / Math.max(1, loads.length);
  const label = (x: number, at: number, text: string, anchor: string) =>
    element(
      'text',
      { x, y: at, 'text-anchor': anchor, 'font-size': 11, fill: inkSoft, 'font-family': drawingFont },
      text,
    );
  const bars = loads.map((load, index) =>
    element('rect', {
      x: LEFT + step * (index + 0.14),
      y: y(load),
      width: step * 0.72,
      height: Math.max(0.6, BASE - y(load)),
      fill: load < LOW_PERCENT ? ink : rampLight,
      stroke: ink,
      'stroke-width': 0.7,
    }),
  );
  const line = (level: number, width: number, dash: string) =>
    element('line', {
      x1: LEFT,
      x2: WIDTH,
      y1: y(level),
      y2: y(level),
      stroke: level === 100 ? accent : ink,
      'stroke-width': width,
      'stroke-dasharray': dash,
    });
  // Every fourth bolt of a large flange is numbered, the first and the last always.
  const every = loads.length > 24 ? 4 : loads.length > 12 ? 2 : 1;
  const numbers = loads.flatMap((_, index) =>
    index % every === 0 ? [label(LEFT + step * (index + 0.5), HEIGHT - 3, String(index + 1), 'middle')] : [],
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img"><title>${title}</title>`,
    ...bars,
    line(100, 1.6, '6 3'),
    line(0, 1, 'none'),
    label(LEFT - 4, y(100) + 4, '100 %', 'end'),
    label(LEFT - 4, BASE + 4, '0', 'end'),
    ...numbers,
    '</svg>',
  ].join('');
}

/** Both drawings on one scale. */
export function skippedPatternSvgs(
  { skipped, kept }: SkippedPattern,
  titles: { readonly skipped: string; readonly kept: string },
): { readonly skipped: string; readonly kept: string } {
  const most = Math.max(115, ...skipped, ...kept) * 1.03;
  return { skipped: loadBarsSvg(skipped, most, titles.skipped), kept: loadBarsSvg(kept, most, titles.kept) };
}
