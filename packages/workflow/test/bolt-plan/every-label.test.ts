import { describe, expect, test } from 'vitest';
import { boltPlanSvg } from '../../src/bolt-plan/bolt-plan-svg.ts';
import { drawingPalettes } from '../../src/bolt-plan/palette.ts';

const SIZE = 488;

interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly turn_deg: number;
}

function labels(count: number): Label[] {
  const svg = boltPlanSvg({
    bolts: Array.from({ length: count }, (_, index) => ({
      label: index + 1,
      clockwiseIndex: index + 1,
      passesDone: 0,
    })),
    passes: 1,
    size: SIZE,
    palette: drawingPalettes.print,
    title: 'Flange',
    labels: 'every',
  });
  const texts = /<text x="([-\d.]+)" y="([-\d.]+)"[^>]*?font-size="([\d.]+)"([^>]*)>([^<]*)<\/text>/g;
  return [...svg.matchAll(texts)].map(([, x, y, size, rest, text]) => {
    const turned = /rotate\(([-\d.]+) ([-\d.]+) ([-\d.]+)\)/.exec(rest ?? '');
    const middle = Number(y) - Number(size) * 0.355;
    return { text: text ?? '', x: Number(x), y: middle, size: Number(size), turn_deg: Number(turned?.[1] ?? 0) };
  });
}

const corners = ({ x, y, text, size, turn_deg }: Label) => {
  const angle = (turn_deg * Math.PI) / 180;
  const [wide, high] = [(text.length * 0.58 * size) / 2, (size * 0.72) / 2];
  return [
    [-wide, -high],
    [wide, -high],
    [wide, high],
    [-wide, high],
  ].map(([across = 0, down = 0]) => ({
    x: x + across * Math.cos(angle) - down * Math.sin(angle),
    y: y + across * Math.sin(angle) + down * Math.cos(angle),
  }));
};

/** Whether two turned boxes touch: no edge of either parts them. */
function touch(one: Label, other: Label): boolean {
  const [a, b] = [corners(one), corners(other)];
  return [one.turn_deg, other.turn_deg].every((turn) =>
    [turn, turn + 90].every((degrees) => {
      const angle = (degrees * Math.PI) / 180;
      const along = (points: typeof a) => points.map(({ x, y }) => x * Math.cos(angle) + y * Math.sin(angle));
      const [first, second] = [along(a), along(b)];
      return Math.max(...first) > Math.min(...second) && Math.max(...second) > Math.min(...first);
    }),
  );
}

const counts = [36, 40, 44, 48, 52, 56, 60, 61, 64, 68, 72, 76, 80, 88, 92, 96, 100, 101, 120, 148, 180, 199, 200];

describe('a plan for paper', () => {
  test.each(counts)('numbers every one of %i bolts once, none touching another, none too small to read', (count) => {
    const drawn = labels(count);
    expect(drawn.map(({ text }) => text)).toEqual(Array.from({ length: count }, (_, index) => String(index + 1)));
    for (const [index, label] of drawn.entries()) {
      expect(label.size, `bolt ${label.text}`).toBeGreaterThan(count % 2 === 0 ? 6.5 : 4);
      for (let away = 1; away <= 6; away += 1) {
        const other = drawn[(index + away) % count];
        if (other && touch(label, other)) throw new Error(`Of ${count} bolts, ${label.text} touches ${other.text}.`);
      }
    }
  });

  test.each(counts)('no number of %i bolts stands upside down', (count) => {
    for (const { turn_deg } of labels(count)) expect(Math.abs(turn_deg)).toBeLessThanOrEqual(90);
  });

  test('up to the size of the discs the numbers stay in them', () => {
    for (const { x, y } of labels(12)) expect(Math.hypot(x - SIZE / 2, y - SIZE / 2)).toBeGreaterThan(SIZE * 0.35);
  });
});
