import { readFileSync } from 'node:fs';
import { type DrawingPalette, drawingPalettes } from '@seatwell/workflow';
import { describe, expect, test } from 'vitest';
import { contrast, hexToLinear, type LinearRgb, linearToHex, oklchToLinear } from './colour.ts';

const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');

function block(selector: RegExp): Map<string, string> {
  const body = new RegExp(`${selector.source}\\s*\\{([^}]*)\\}`).exec(css)?.[1];
  if (body === undefined) throw new Error(`tokens.css has no block ${selector.source}.`);
  return new Map(
    [...body.matchAll(/--([\w-]+):\s*([^;]+);/g)].map((found) => [found[1] ?? '', (found[2] ?? '').trim()]),
  );
}

const themes = {
  light: block(/(?:^|\n):root/),
  dark: block(/:root\[data-theme=["']dark["']\]/),
  bright: block(/:root\[data-theme=["']bright["']\]/),
};
type ThemeName = keyof typeof themes;
const names = Object.keys(themes) as ThemeName[];

function colour(theme: ThemeName, token: string): LinearRgb {
  const written = themes[theme].get(token);
  const found = /^oklch\(([\d.]+) ([\d.]+) ([\d.]+)\)$/.exec(written ?? '');
  if (!found) throw new Error(`Token --${token} of the ${theme} theme is "${written}", not an opaque oklch().`);
  return oklchToLinear(Number(found[1]), Number(found[2]), Number(found[3]));
}

// Text on what it stands on. Bright is for sunlight: 7:1 (WCAG 2.2, 1.4.6); the others 4.5:1 (1.4.3).
const texts: [string, string][] = [
  ...['paper', 'sheet', 'sunk', 'ramp-1'].flatMap((ground): [string, string][] => [
    ['ink', ground],
    ['ink-soft', ground],
  ]),
  ...['paper', 'sheet', 'ramp-1'].flatMap((ground): [string, string][] => [
    ['accent', ground],
    ['accent-deep', ground],
  ]),
  ['on-accent', 'accent'],
  ['on-accent', 'accent-deep'],
  ['on-stop', 'stop'],
  ['paper', 'ink'],
  ...['paper', 'sheet', 'sunk', 'attention-wash'].map((ground): [string, string] => ['attention', ground]),
  ...['paper', 'sheet', 'sunk', 'stop-wash', 'ramp-1'].map((ground): [string, string] => ['stop', ground]),
  ['stop-deep', 'stop-wash'],
  ['ink', 'attention-wash'],
  ['ink', 'stop-wash'],
  ['ink-soft', 'stop-wash'],
  ['ink-soft', 'attention-wash'],
];
// Edges of controls and parts of figures that must be seen: 3:1 (WCAG 2.2, 1.4.11).
const edges: [string, string][] = [
  ['line-strong', 'paper'],
  ['line-strong', 'sheet'],
  ['focus', 'paper'],
  ['focus', 'sheet'],
  ['accent', 'sunk'],
];

describe.each(names)('the %s theme', (theme) => {
  test.each(texts)('shows %s on %s', (text, ground) => {
    const ratio = contrast(colour(theme, text), colour(theme, ground));
    expect(ratio).toBeGreaterThanOrEqual(theme === 'bright' ? 7 : 4.5);
  });

  test.each(edges)('shows the edge %s on %s', (edge, ground) => {
    expect(contrast(colour(theme, edge), colour(theme, ground))).toBeGreaterThanOrEqual(3);
  });

  test('has the names of the light theme, no more and no fewer', () => {
    expect([...themes[theme].keys()].sort()).toEqual([...themes.light.keys()].sort());
  });

  test('has a ramp whose steps can be told apart', () => {
    const steps = [1, 2, 3, 4, 5].map((step) => colour(theme, `ramp-${step}`));
    steps.slice(1).forEach((step, index) => {
      expect(contrast(step, steps[index] ?? step)).toBeGreaterThan(1.25);
    });
  });

  test('has the colours of the drawings', () => {
    const palette = drawingPalettes[theme];
    const tokens: Record<keyof DrawingPalette, string> = {
      sheet: 'sheet',
      ink: 'ink',
      inkSoft: 'ink-soft',
      line: 'line',
      rampLight: 'ramp-2',
      rampMiddle: 'ramp-3',
      accent: 'accent',
      onAccent: 'on-accent',
      stop: 'stop',
    };
    for (const [name, token] of Object.entries(tokens)) {
      expect(palette[name as keyof DrawingPalette], token).toBe(linearToHex(colour(theme, token)));
    }
  });
});

test('the dark theme is the same by choice and by the system', () => {
  expect(block(/:root:not\(\[data-theme\]\)/)).toEqual(themes.dark);
});

test.each(Object.entries(drawingPalettes))('the numbers of a %s drawing stand out', (name, palette) => {
  const least = name === 'bright' || name === 'print' ? 7 : 4.5;
  const ratio = (one: string, other: string) => contrast(hexToLinear(one), hexToLinear(other));
  for (const [text, ground] of [
    [palette.ink, palette.sheet],
    [palette.inkSoft, palette.sheet],
    [palette.ink, palette.rampLight],
    [palette.onAccent, palette.accent],
    [palette.accent, palette.sheet],
    [palette.stop, palette.sheet],
  ] as const) {
    expect(ratio(text, ground), `${text} on ${ground}`).toBeGreaterThanOrEqual(least);
  }
});

test('the contrast of black on white is 21, of equal colours 1', () => {
  expect(contrast(hexToLinear('#000000'), hexToLinear('#ffffff'))).toBeCloseTo(21, 5);
  expect(contrast(hexToLinear('#808080'), hexToLinear('#808080'))).toBe(1);
});
