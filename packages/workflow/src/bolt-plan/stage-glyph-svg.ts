import type { Stage } from '@seatwell/contract';
import type { DrawingPalette } from './palette.ts';
import { element, escapeXml } from './svg-text.ts';

export interface StageGlyphOptions {
  readonly size: number;
  readonly palette: DrawingPalette;
  /** name of the stage for those who do not see it; leave out where the word stands beside the glyph */
  readonly title?: string;
}

/**
 * The bolt plan shrunk to a sign: its form alone tells the stage, so that it works without colour.
 * Drawn on a grid of 24; each stage adds to or changes the one before.
 */
export function stageGlyphSvg(stage: Stage, { size, palette, title }: StageGlyphOptions): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: '0 0 24 24',
      width: size,
      height: size,
      ...(title === undefined ? { 'aria-hidden': 'true' } : { role: 'img' }),
    },
    (title === undefined ? '' : element('title', {}, escapeXml(title))) + forms[stage](palette),
  );
}

const forms: Readonly<Record<Stage, (palette: DrawingPalette) => string>> = {
  planned: ({ ink }) => ring(10, 1.7, ink, '1.7 2.79'),
  engineered: ({ ink }) => ring(10, 1.3, ink),
  released: ({ ink }) => ring(10, 1.3, ink) + notch(ink),
  open: ({ ink }) => ring(9.6, 3, ink, '8.04 4.02'),
  'faces-accepted': ({ ink }) => ring(9.6, 3, ink),
  'nipped-up': ({ ink, accent }) => ring(10.4, 1.2, ink) + bolts(6.3, () => false, accent),
  'part-tight': ({ stop }) => ring(10.3, 2.2, stop, '5.6 2.49') + bolts(5.9, (place) => place < 4, stop),
  tight: ({ ink, accent }) => ring(10.4, 1.2, ink) + bolts(6.3, () => true, accent),
  checked: ({ ink, accent }) => twoRings(ink) + bolts(5.5, () => true, accent),
  proven: ({ ink, accent }) => twoRings(ink) + bolts(5.7, () => true, accent, 1.5) + centre(3.1, accent),
  'handed-over': ({ accent }) => element('circle', { cx: 12, cy: 12, r: 11, fill: accent }),
};

function ring(radius: number, width: number, stroke: string, dash?: string): string {
  return element('circle', {
    cx: 12,
    cy: 12,
    r: radius,
    fill: 'none',
    stroke,
    'stroke-width': width,
    'stroke-dasharray': dash,
  });
}

function twoRings(ink: string): string {
  return ring(11.3, 1.1, ink) + ring(8.6, 1.1, ink);
}

function bolts(circle: number, filled: (place: number) => boolean, colour: string, radius = 1.7): string {
  return Array.from({ length: 8 }, (_, place) => {
    const angle = (Math.PI / 4) * place + Math.PI / 8;
    const full = filled(place);
    return element('circle', {
      cx: 12 + circle * Math.sin(angle),
      cy: 12 - circle * Math.cos(angle),
      r: full ? radius : radius - 0.2,
      fill: full ? colour : 'none',
      stroke: full ? undefined : colour,
      'stroke-width': full ? undefined : 1,
    });
  }).join('');
}

function notch(ink: string): string {
  return element('polygon', { points: '8.2,0.4 15.8,0.4 12,6.6', fill: ink });
}

function centre(radius: number, colour: string): string {
  return element('circle', { cx: 12, cy: 12, r: radius, fill: colour });
}
