import { describe, expect, test } from 'vitest';
import { paperFigures } from '../paper-figures.ts';
import { curveSvg } from './curve-svg.ts';

const line = (counts: readonly number[]) => counts.map((count, index) => ({ day: `2027-03-0${index + 1}`, count }));
const heightsIn = (svg: string, index: number) =>
  ([...svg.matchAll(/points="([^"]*)"/g)][index]?.[1] ?? '')
    .split(' ')
    .filter((point) => point !== '')
    .map((point) => Number(point.split(',')[1]));

describe('the curve of the report', () => {
  const curve = { plan: line([10, 40, 80, 100]), actual: line([8, 30]), unplanned: 0 };

  test('rises with the counts, plan broken and actual full, from the same zero', () => {
    const svg = curveSvg(curve, '2027-03-02', paperFigures('en', 'SI'));
    const [plan, actual] = [heightsIn(svg, 0), heightsIn(svg, 1)];
    expect(plan).toHaveLength(4);
    expect(actual).toHaveLength(2);
    expect(plan).toEqual([...plan].sort((a, b) => b - a));
    // 100 joints stand at the top of the drawing, 40 are at 0.4 of the height between top and foot.
    const [top, foot] = [8, 132];
    expect(plan[3]).toBeCloseTo(top, 1);
    expect(plan[1]).toBeCloseTo(foot - 0.4 * (foot - top), 1);
    expect(actual[1]).toBeCloseTo(foot - 0.3 * (foot - top), 1);
    expect(svg).toMatch(/stroke-dasharray="5 3"/);
    expect(svg).toContain('>30<');
    expect(svg).toContain('>1 Mar<');
  });

  test('of a shutdown without joints, or on a day outside it, is drawn without a hole', () => {
    const svg = curveSvg({ plan: line([0]), actual: [], unplanned: 0 }, '2028-01-01', paperFigures('en', 'SI'));
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });
});
