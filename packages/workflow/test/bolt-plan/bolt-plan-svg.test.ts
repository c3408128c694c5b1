import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BoltPlanInput, boltPlanSvg, type PlanBolt } from '../../src/bolt-plan/bolt-plan-svg.ts';
import { drawingPalettes } from '../../src/bolt-plan/palette.ts';

const palette = drawingPalettes.light;

function flange(count: number, change: (bolt: PlanBolt) => Partial<PlanBolt> = () => ({})): PlanBolt[] {
  return Array.from({ length: count }, (_, index) => {
    const bolt = { label: index + 1, clockwiseIndex: index + 1, passesDone: 0 };
    return { ...bolt, ...change(bolt) };
  });
}

function draw(bolts: readonly PlanBolt[], more: Partial<BoltPlanInput> = {}): string {
  return boltPlanSvg({
    bolts,
    passes: 4,
    size: 360,
    palette,
    title: 'Flange',
    ...more,
  });
}

/** The numbers as drawn, each with the place and size of its text. */
function labels(svg: string): { text: string; x: number; y: number; size: number }[] {
  return [...svg.matchAll(/<text x="([-\d.]+)" y="([-\d.]+)"[^>]*font-size="([\d.]+)"[^>]*>([^<]*)<\/text>/g)].map(
    (match) => ({
      x: Number(match[1]),
      y: Number(match[2]),
      size: Number(match[3]),
      text: match[4] ?? '',
    }),
  );
}

const placeOf = (svg: string, text: string) => {
  const found = labels(svg).filter((label) => label.text === text);
  expect(found, `label ${text}`).toHaveLength(1);
  return found[0] ?? { text: '', x: 0, y: 0, size: 0 };
};

describe('the bolt plan', () => {
  test.each([4, 8, 16, 32, 48, 60])('carries each number of a flange of %i bolts once', (count) => {
    const drawn = labels(draw(flange(count))).map((label) => label.text);
    expect(drawn.sort()).toEqual(
      flange(count)
        .map((bolt) => String(bolt.label))
        .sort(),
    );
  });

  test.each([64, 96, 120, 200])('labels bolt 1 and at most 25 more of %i bolts, none twice', (count) => {
    const drawn = labels(draw(flange(count))).map((label) => label.text);
    expect(drawn).toContain('1');
    expect(new Set(drawn).size).toBe(drawn.length);
    expect(drawn.length).toBeGreaterThan(8);
    expect(drawn.length).toBeLessThanOrEqual(25);
  });

  test('stands bolt 1 at the top, under the notch', () => {
    const svg = draw(flange(16));
    const one = placeOf(svg, '1');
    expect(one.x).toBeCloseTo(180, 1);
    expect(one.y).toBeLessThan(100);
    const notch = /<polygon points="([^"]+)"/
      .exec(svg)?.[1]
      ?.split(' ')
      .map((point) => point.split(',').map(Number));
    const tip = notch?.[2];
    expect(tip?.[0]).toBeCloseTo(180, 1);
    expect(tip?.[1]).toBeLessThan(one.y);
  });

  test('turns notch and bolts together when the datum is not at the top', () => {
    const svg = draw(flange(16), { datumAngle_deg: 90 });
    const one = placeOf(svg, '1');
    expect(one.x).toBeGreaterThan(280);
    const tip = /<polygon points="([^"]+)"/.exec(svg)?.[1]?.split(' ')[2]?.split(',').map(Number);
    expect(tip?.[0]).toBeGreaterThan(one.x);
    expect(tip?.[1]).toBeCloseTo(180, 1);
  });

  test('runs clockwise, and the other way when the numbers run the other way', () => {
    const clockwise = draw(flange(16));
    expect(placeOf(clockwise, '2').x).toBeGreaterThan(180);
    const turned = draw(
      flange(16, (bolt) => ({
        label: bolt.clockwiseIndex === 1 ? 1 : 18 - bolt.clockwiseIndex,
      })),
    );
    expect(placeOf(turned, '1').x).toBeCloseTo(180, 1);
    for (const number of ['2', '3', '7', '16']) {
      expect(placeOf(turned, number).x).toBeCloseTo(360 - placeOf(clockwise, number).x, 1);
      expect(placeOf(turned, number).y).toBeCloseTo(placeOf(clockwise, number).y, 1);
    }
  });

  test('is mirrored from the other side', () => {
    const front = draw(flange(12));
    const back = draw(flange(12), { seenFrom: 'other-side' });
    expect(placeOf(back, '4').x).toBeCloseTo(360 - placeOf(front, '4').x, 1);
    expect(placeOf(back, '1').x).toBeCloseTo(placeOf(front, '1').x, 1);
  });

  test('keeps the number of the current bolt readable at 360 px, from 4 to 200 bolts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 200 }), fc.nat(), (count, seed) => {
        const current = (seed % count) + 1;
        const svg = draw(flange(count, (bolt) => (bolt.clockwiseIndex === current ? { state: 'now' } : {})));
        expect(placeOf(svg, String(current)).size).toBeGreaterThanOrEqual(13);
      }),
    );
  });

  test('draws every bolt of the current group large and apart from its neighbours', () => {
    const group = [117, 118, 119, 120, 1, 2, 3, 4];
    const svg = draw(flange(120, (bolt) => (group.includes(bolt.clockwiseIndex) ? { state: 'group' } : {})));
    const places = group.map((number) => placeOf(svg, String(number)));
    places.forEach((place, index) => {
      expect(place.size).toBeGreaterThanOrEqual(13);
      const next = places[index + 1];
      if (next) expect(Math.hypot(next.x - place.x, next.y - place.y)).toBeGreaterThan(30);
    });
  });

  test('brackets the groups and makes the current one heavier', () => {
    const groups = [
      { label: 'A', firstClockwiseIndex: 1, lastClockwiseIndex: 32 },
      {
        label: 'B',
        firstClockwiseIndex: 33,
        lastClockwiseIndex: 64,
        current: true,
      },
    ];
    const svg = draw(flange(64), { groups });
    const widths = [...svg.matchAll(/<path d="M[^"]+" fill="none" stroke="[^"]+" stroke-width="([\d.]+)"/g)].map(
      (match) => Number(match[1]),
    );
    expect(widths).toHaveLength(2);
    expect(widths[1]).toBeGreaterThan(widths[0] ?? 0);
    expect(placeOf(svg, 'A').x).toBeGreaterThan(180);
    expect(placeOf(svg, 'B').x).toBeLessThan(180);
  });

  test('fills a bolt by the passes done', () => {
    const empty = draw(flange(8));
    const full = draw(flange(8, () => ({ passesDone: 4 })));
    const half = draw(flange(8, () => ({ passesDone: 2 })));
    const fills = (svg: string, colour: string) => svg.split(`fill="${colour}"`).length - 1;
    expect([fills(empty, palette.accent), fills(full, palette.accent)]).toEqual([0, 8]);
    expect([fills(empty, palette.rampLight), fills(half, palette.rampLight)]).toEqual([0, 8]);
  });

  test('draws measured loads as bars, and marks one beyond the scale', () => {
    const svg = draw(
      flange(8, (bolt) => ({
        loadPercent: bolt.clockwiseIndex === 3 ? 160 : 80,
      })),
    );
    expect(svg.split(`stroke="${palette.rampMiddle}"`).length - 1).toBe(7);
    expect(svg.split(`stroke="${palette.stop}"`).length - 1).toBe(2);
  });

  test('says what it shows, and from where', () => {
    const svg = draw(flange(8), {
      title: 'Pump <side> & "bolts"',
      viewedFrom: 'from the pump side',
    });
    expect(svg).toContain('<title>Pump &lt;side&gt; &amp; &quot;bolts&quot;</title>');
    expect(placeOf(svg, 'from the pump side').y).toBeGreaterThan(360);
  });

  test('uses presentation attributes only and never an unreadable number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 200 }), fc.integer({ min: 24, max: 900 }), (count, size) => {
        const svg = draw(
          flange(count, (bolt) => ({
            passesDone: bolt.clockwiseIndex % 5,
            state: 'next',
            loadPercent: 90,
          })),
          {
            size,
            centre: [{ text: '475', size: 0.15 }, { text: 'N·m' }],
            viewedFrom: 'from above',
          },
        );
        expect(svg).not.toMatch(/style|class=|var\(|NaN|Infinity|undefined/);
      }),
    );
  });

  test.each([
    ['too few bolts', flange(2), {}, /at least 3/],
    ['a shared place', [...flange(7), { label: 8, clockwiseIndex: 3, passesDone: 0 }], {}, /Two bolts have place 3/],
    ['a place beyond the circle', flange(8, () => ({ clockwiseIndex: 9 })), {}, /places run from 1 to 8/],
    ['more passes than planned', flange(8, () => ({ passesDone: 5 })), {}, /5 passes done; the plan has 4/],
    ['a negative load', flange(8, () => ({ loadPercent: -1 })), {}, /0 % or more/],
    ['no size', flange(8), { size: 0 }, /above 0/],
  ])('refuses %s', (_, bolts, more, message) => {
    expect(() => draw(bolts, more)).toThrow(message);
  });
});
