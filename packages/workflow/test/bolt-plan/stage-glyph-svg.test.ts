import { STAGES } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { drawingPalettes } from '../../src/bolt-plan/palette.ts';
import { stageGlyphSvg } from '../../src/bolt-plan/stage-glyph-svg.ts';

const glyph = (stage: (typeof STAGES)[number], palette = drawingPalettes.light) =>
  stageGlyphSvg(stage, { size: 24, palette });

interface Circle {
  x: number;
  y: number;
  radius: number;
  filled: boolean;
  line: number;
  dash: number[];
}

function circles(svg: string): Circle[] {
  return [...svg.matchAll(/<circle ([^>]*)\/>/g)].map((match) => {
    const attribute = (name: string) => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(match[1] ?? '')?.[1];
    return {
      x: Number(attribute('cx')),
      y: Number(attribute('cy')),
      radius: Number(attribute('r')),
      filled: attribute('fill') !== 'none',
      line: attribute('stroke') === undefined ? 0 : Number(attribute('stroke-width')),
      dash: (attribute('stroke-dasharray') ?? '').split(' ').filter(Boolean).map(Number),
    };
  });
}

/** Which of 48 × 48 points of the glyph are inked, by colourless form: what a colour-blind eye in bad light has. */
function inked(svg: string): boolean[] {
  const notch = svg.includes('<polygon');
  return Array.from({ length: 48 * 48 }, (_, index) => {
    const x = (index % 48) / 2 + 0.25;
    const y = Math.floor(index / 48) / 2 + 0.25;
    const inNotch = notch && y > 0.4 && y < 6.6 && Math.abs(x - 12) < (3.8 * (6.6 - y)) / 6.2;
    return inNotch || circles(svg).some((circle) => covers(circle, x, y));
  });
}

function covers({ x, y, radius, filled, line, dash }: Circle, px: number, py: number): boolean {
  const distance = Math.hypot(px - x, py - y);
  if (filled && distance <= radius) return true;
  if (line === 0 || Math.abs(distance - radius) > line / 2) return false;
  const [mark, gap] = dash;
  if (mark === undefined || gap === undefined) return true;
  // A circle's dashes begin at three o'clock and run clockwise.
  const along = ((Math.atan2(py - y, px - x) + 2 * Math.PI) % (2 * Math.PI)) * radius;
  return along % (mark + gap) < mark;
}

describe('the sign of a stage', () => {
  const drawings = STAGES.map((stage) => ({
    stage,
    points: inked(glyph(stage)),
  }));
  const pairs = drawings.flatMap((one, index) => drawings.slice(index + 1).map((other) => [one, other] as const));

  test.each(pairs.map(([one, other]) => [one.stage, other.stage, one.points, other.points] as const))(
    'tells %s from %s at 24 px by its form alone',
    (_one, _other, points, otherPoints) => {
      const different = points.filter((point, index) => point !== otherPoints[index]).length;
      // 4 points are one pixel of the 24 px sign: at least twelve whole pixels differ
      expect(different).toBeGreaterThan(48);
    },
  );

  test('keeps the stop colour for part tight', () => {
    for (const stage of STAGES) {
      expect(glyph(stage).includes(drawingPalettes.light.stop), stage).toBe(stage === 'part-tight');
    }
  });

  test('has the forms of the stages', () => {
    const bolts = (stage: (typeof STAGES)[number]) => {
      const small = circles(glyph(stage)).filter((circle) => circle.radius < 2);
      return [small.filter((bolt) => bolt.filled).length, small.length];
    };
    const outer = (stage: (typeof STAGES)[number]) => circles(glyph(stage)).filter((circle) => circle.radius > 8);
    expect(outer('planned')[0]?.dash).toHaveLength(2);
    expect(outer('engineered')[0]?.dash).toHaveLength(0);
    expect(glyph('released')).toContain('<polygon');
    expect(outer('open')[0]?.dash).toHaveLength(2);
    expect(outer('open')[0]?.line).toBe(outer('faces-accepted')[0]?.line);
    expect(outer('faces-accepted')[0]?.line).toBeGreaterThan(2 * (outer('engineered')[0]?.line ?? 0));
    expect(bolts('nipped-up')).toEqual([0, 8]);
    expect(bolts('part-tight')).toEqual([4, 8]);
    expect(outer('part-tight')[0]?.dash).toHaveLength(2);
    expect(bolts('tight')).toEqual([8, 8]);
    expect(outer('tight')).toHaveLength(1);
    expect(outer('checked')).toHaveLength(2);
    expect(circles(glyph('proven')).filter((circle) => circle.filled && circle.radius > 2)).toHaveLength(1);
    expect(circles(glyph('handed-over')).map((circle) => circle.filled)).toEqual([true]);
  });

  test('is silent beside its word and speaks alone', () => {
    expect(glyph('tight')).toContain('aria-hidden="true"');
    const speaking = stageGlyphSvg('tight', {
      size: 24,
      palette: drawingPalettes.dark,
      title: 'Tight',
    });
    expect(speaking).toContain('<title>Tight</title>');
    expect(speaking).not.toContain('aria-hidden');
  });
});
