import { drawBolts } from './draw-bolts.ts';
import { drawGroups } from './draw-groups.ts';
import { layOutPlan, type PlanLayout, pointAt } from './layout.ts';
import type { DrawingPalette } from './palette.ts';
import { centredText, drawingFont, element, escapeXml } from './svg-text.ts';

/** One bolt of the plan. */
export interface PlanBolt {
  /** the number chalked beside it */
  readonly label: string | number;
  /** its place, counted clockwise from the datum as seen from the viewing side; the bolt at the datum is 1 */
  readonly clockwiseIndex: number;
  /** passes recorded on it, 0 to `passes` */
  readonly passesDone: number;
  /** to be tightened now, to come next, or one of the group that is worked on */
  readonly state?: 'now' | 'next' | 'group' | undefined;
  /** measured or computed load in percent of the target, drawn as a bar outside the bolt */
  readonly loadPercent?: number | undefined;
}

/** Bolts that are worked on as one, side by side on the circle. */
export interface PlanGroup {
  readonly label: string;
  readonly firstClockwiseIndex: number;
  readonly lastClockwiseIndex: number;
  readonly current?: boolean;
}

/** A line of text in the middle. */
export interface CentreLine {
  readonly text: string;
  /** share of the drawing's width, for example 0.15 for the set value */
  readonly size?: number;
  readonly tone?: 'ink' | 'soft' | 'accent' | 'stop';
  readonly weight?: number;
}

export interface BoltPlanInput {
  readonly bolts: readonly PlanBolt[];
  /** passes that make a bolt full, at least 1 */
  readonly passes: number;
  /** width of the drawing */
  readonly size: number;
  readonly palette: DrawingPalette;
  /** what the drawing shows, in a sentence, for those who do not see it */
  readonly title: string;
  readonly description?: string | undefined;
  readonly centre?: readonly CentreLine[];
  /** line below the flange that says from which side it is seen */
  readonly viewedFrom?: string | undefined;
  /** seen from the other side everything is mirrored */
  readonly seenFrom?: 'viewing-side' | 'other-side';
  /** where bolt 1 stands, degrees clockwise from the top; the notch moves with it */
  readonly datumAngle_deg?: number;
  readonly groups?: readonly PlanGroup[];
  /** `every`: paper cannot be asked, so each bolt has its number however many there are; default: enough to count from */
  readonly labels?: 'enough' | 'every';
}

/** What the parts of the drawing share. */
export interface PlanDrawing {
  readonly input: BoltPlanInput;
  readonly layout: PlanLayout;
  readonly angleOf: (clockwiseIndex: number) => number;
}

/**
 * Draws the bolt plan: the flange from its viewing side, a notch at the datum, bolts filled by the passes
 * done, the set value in the middle. One drawing for screen and print: presentation attributes only.
 * From about 36 bolts (at 360 px) the numbers leave the discs, and the bolts worked on are drawn large.
 * @returns a complete SVG element
 * @throws RangeError when bolts share a place, a place or a count of passes is impossible, or a size is not positive
 */
export function boltPlanSvg(input: BoltPlanInput): string {
  check(input);
  const count = input.bolts.length;
  const layout = layOutPlan(input.size, count, {
    outside: (input.groups ?? []).length > 0 || input.bolts.some((bolt) => bolt.loadPercent !== undefined),
    called: input.bolts.filter((bolt) => bolt.state !== undefined).length,
  });
  const turn = input.seenFrom === 'other-side' ? -1 : 1;
  const datum = ((input.datumAngle_deg ?? 0) * Math.PI) / 180;
  const angleOf = (index: number) => turn * (datum + (2 * Math.PI * (index - 1)) / count);
  const drawing: PlanDrawing = { input, layout, angleOf };

  const caption = input.viewedFrom === undefined ? 0 : Math.max(14, input.size * 0.07);
  const content = [
    element('title', {}, escapeXml(input.title)),
    input.description === undefined ? '' : element('desc', {}, escapeXml(input.description)),
    drawFlange(drawing),
    drawGroups(drawing),
    drawBolts(drawing),
    drawCentre(drawing),
    caption === 0 ? '' : drawCaption(drawing, caption),
  ];
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${input.size} ${input.size + caption}`,
      width: input.size,
      height: input.size + caption,
      role: 'img',
      'font-family': drawingFont,
      direction: 'ltr',
    },
    content.join(''),
  );
}

function check({ bolts, passes, size }: BoltPlanInput): void {
  if (bolts.length < 3) {
    throw new RangeError(`A bolt plan of ${bolts.length} bolts was asked for; a flange has at least 3.`);
  }
  if (!(size > 0)) throw new RangeError(`The drawing's size is ${size}; it must be above 0.`);
  if (!(passes >= 1)) throw new RangeError(`The plan has ${passes} passes; give at least 1.`);
  const taken = new Set<number>();
  for (const { label, clockwiseIndex, passesDone, loadPercent } of bolts) {
    if (!Number.isInteger(clockwiseIndex) || clockwiseIndex < 1 || clockwiseIndex > bolts.length) {
      throw new RangeError(`Bolt ${label} has place ${clockwiseIndex}; places run from 1 to ${bolts.length}.`);
    }
    if (taken.has(clockwiseIndex)) {
      throw new RangeError(`Two bolts have place ${clockwiseIndex}; give each its own.`);
    }
    taken.add(clockwiseIndex);
    if (!(passesDone >= 0 && passesDone <= passes)) {
      throw new RangeError(`Bolt ${label} has ${passesDone} passes done; the plan has ${passes}.`);
    }
    if (loadPercent !== undefined && !(loadPercent >= 0)) {
      throw new RangeError(`Bolt ${label} has a load of ${loadPercent} %; a bolt load is 0 % or more.`);
    }
  }
}

function drawFlange({ input, layout, angleOf }: PlanDrawing): string {
  const { palette, size } = input;
  const ring = (radius: number, stroke: string, width: number, fill: string) =>
    element('circle', {
      cx: layout.centre,
      cy: layout.centre,
      r: radius,
      fill,
      stroke,
      'stroke-width': width,
    });
  const half = size * 0.021;
  const angle = angleOf(1);
  const spread = half / layout.rim;
  const outer = layout.rim + size * 0.004;
  const corners = [
    pointAt(layout, angle - spread, outer),
    pointAt(layout, angle + spread, outer),
    pointAt(layout, angle, layout.rim - half * 1.65),
  ];
  return [
    ring(layout.rim, palette.ink, Math.max(1.2, size * 0.0045), palette.sheet),
    ring(layout.face, palette.line, Math.max(0.8, size * 0.0035), 'none'),
    ring(layout.bore, palette.line, Math.max(0.8, size * 0.0035), 'none'),
    element('polygon', {
      points: corners.map(({ x, y }) => `${x.toFixed(2)},${y.toFixed(2)}`).join(' '),
      fill: palette.ink,
    }),
  ].join('');
}

function drawCentre({ input, layout }: PlanDrawing): string {
  const lines = (input.centre ?? []).map((line) => ({
    ...line,
    height: (line.size ?? 0.06) * input.size,
  }));
  const total = lines.reduce((sum, line) => sum + line.height * 1.12, 0);
  const { palette } = input;
  const tones = {
    ink: palette.ink,
    soft: palette.inkSoft,
    accent: palette.accent,
    stop: palette.stop,
  };
  let top = layout.centre - total / 2;
  return lines
    .map(({ text, tone = 'ink', weight = 640, height }) => {
      const y = top + height * 0.56;
      top += height * 1.12;
      return centredText(text, { x: layout.centre, y }, fitted(text, height, layout.bore * 1.86), {
        fill: tones[tone],
        'font-weight': weight,
      });
    })
    .join('');
}

// About 0.6 em is the widest average a digit or letter of the family takes: long lines shrink to the bore.
function fitted(text: string, height: number, width: number): number {
  return Math.min(height, width / Math.max(1, text.length * 0.6));
}

function drawCaption({ input, layout }: PlanDrawing, height: number): string {
  const text = input.viewedFrom ?? '';
  const size = fitted(text, height * 0.68, input.size);
  return centredText(text, { x: layout.centre, y: input.size + height / 2 }, size, {
    fill: input.palette.inkSoft,
    'font-weight': 440,
  });
}
