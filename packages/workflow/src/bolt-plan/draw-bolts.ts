import type { PlanBolt, PlanDrawing } from './bolt-plan-svg.ts';
import { placeEveryLabel } from './every-label.ts';
import { labelStep, type Point, pointAt, spreadAngles } from './layout.ts';
import { centredText, element, rounded } from './svg-text.ts';

/** Draws the discs, their numbers, and large discs for the bolts worked on where the others are too small. */
export function drawBolts(drawing: PlanDrawing): string {
  const { input, layout } = drawing;
  const bolts = [...input.bolts].sort((one, other) => one.clockwiseIndex - other.clockwiseIndex);
  const parts = bolts.map((bolt) => drawLoad(drawing, bolt) + drawOnCircle(drawing, bolt));
  if (layout.dense) parts.push((input.labels === 'every' ? drawEveryLabel : drawRingLabels)(drawing, bolts));
  if (layout.crowded) parts.push(drawCallouts(drawing, bolts));
  return parts.join('');
}

function drawOnCircle(drawing: PlanDrawing, bolt: PlanBolt): string {
  const { layout, angleOf } = drawing;
  const at = pointAt(layout, angleOf(bolt.clockwiseIndex), layout.boltCircle);
  return drawDisc(drawing, bolt, at, layout.boltRadius, !layout.dense && !(layout.crowded && bolt.state !== undefined));
}

function drawDisc({ input }: PlanDrawing, bolt: PlanBolt, at: Point, radius: number, labelled: boolean): string {
  const { palette, passes } = input;
  const share = bolt.passesDone / passes;
  const line = Math.max(0.7, radius * 0.066);
  const ring = (r: number, width: number, dash?: string) =>
    element('circle', {
      cx: at.x,
      cy: at.y,
      r,
      fill: 'none',
      stroke: palette.accent,
      'stroke-width': width,
      'stroke-dasharray': dash,
    });
  const around = {
    now: () => ring(radius * 1.24, Math.max(2, radius * 0.19)),
    next: () => ring(radius * 1.19, Math.max(1, radius * 0.07), `${radius * 0.17} ${radius * 0.15}`),
    group: () => ring(radius * 1.14, Math.max(1, radius * 0.07)),
  };
  return [
    element('circle', {
      cx: at.x,
      cy: at.y,
      r: radius,
      fill: share >= 1 ? palette.accent : palette.sheet,
      stroke: palette.ink,
      'stroke-width': bolt.state === 'now' ? line * 1.5 : line,
    }),
    share > 0 && share < 1 ? drawLevel(at, radius - line / 2, share, palette.rampLight) : '',
    bolt.state === undefined ? '' : around[bolt.state](),
    labelled ? drawLabel(String(bolt.label), at, radius, share >= 1 ? palette.onAccent : palette.ink) : '',
  ].join('');
}

// Passes done rise in the disc like a level.
function drawLevel(at: Point, radius: number, share: number, fill: string): string {
  const y = at.y + radius - 2 * radius * share;
  const half = Math.sqrt(Math.max(0, radius * radius - (y - at.y) ** 2));
  const round = (value: number) => Math.round(value * 100) / 100;
  return element('path', {
    d: `M${round(at.x - half)} ${round(y)}A${round(radius)} ${round(radius)} 0 ${share > 0.5 ? 1 : 0} 0 ${round(at.x + half)} ${round(y)}Z`,
    fill,
  });
}

function drawLabel(text: string, at: Point, radius: number, fill: string): string {
  const size = Math.min(radius * 1.04, (radius * 2.7) / Math.max(1, text.length));
  return centredText(text, at, size, { 'font-weight': 640, fill });
}

interface Callout {
  readonly bolt: PlanBolt;
  readonly angle: number;
  readonly at: Point;
  readonly radius: number;
}

// A dense plan has its numbers inside the bolt circle, on two rings in turn so that neighbours do not touch.
function drawRingLabels(drawing: PlanDrawing, bolts: readonly PlanBolt[]): string {
  const { input, layout, angleOf } = drawing;
  const count = bolts.length;
  const step = labelStep(count);
  const size = Math.max(10, input.size * 0.03);
  const callouts = placeCallouts(drawing, bolts);
  return bolts
    .filter(
      ({ clockwiseIndex: place, state }) =>
        // The last number would touch that of bolt 1.
        state === undefined && (place === 1 || (place % step === 0 && (step === 1 || place < count - step / 2))),
    )
    .map((bolt) => {
      const inner = step === 1 && bolt.clockwiseIndex % 2 === 0;
      const radius = layout.boltCircle - layout.boltRadius - size * (inner ? 1.85 : 0.8);
      return { bolt, at: pointAt(layout, angleOf(bolt.clockwiseIndex), radius) };
    })
    .filter(({ at }) =>
      callouts.every(
        (callout) => Math.hypot(at.x - callout.at.x, at.y - callout.at.y) > callout.radius * 1.24 + size * 0.7,
      ),
    )
    .map(({ bolt, at }) =>
      centredText(String(bolt.label), at, size, { 'font-weight': 540, fill: input.palette.inkSoft }),
    )
    .join('');
}

function drawEveryLabel({ input, layout, angleOf }: PlanDrawing, bolts: readonly PlanBolt[]): string {
  const angles = bolts.map((bolt) => angleOf(bolt.clockwiseIndex));
  const digits = Math.max(...bolts.map((bolt) => String(bolt.label).length));
  const { size, labels } = placeEveryLabel(layout, angles, digits, input.size);
  return bolts
    .map((bolt, index) => {
      const { at, turn_deg } = labels[index] ?? { at: pointAt(layout, angles[index] ?? 0, layout.face), turn_deg: 0 };
      return centredText(String(bolt.label), at, size, {
        'font-weight': 640,
        fill: input.palette.ink,
        transform: turn_deg === 0 ? undefined : `rotate(${[turn_deg, at.x, at.y].map(rounded).join(' ')})`,
      });
    })
    .join('');
}

function placeCallouts({ layout, angleOf }: PlanDrawing, bolts: readonly PlanBolt[]): Callout[] {
  const called = bolts
    .filter((bolt) => bolt.state !== undefined)
    .map((bolt) => ({ bolt, angle: angleOf(bolt.clockwiseIndex) }))
    .sort((one, other) => one.angle - other.angle);
  const most = (Math.PI * layout.calloutCircle) / (Math.max(1, called.length) * 1.3);
  const radius = Math.min(layout.calloutRadius, most);
  const spread = spreadAngles(
    called.map(({ angle }) => angle),
    (radius * 2.4) / layout.calloutCircle,
  );
  return called.map(({ bolt, angle }, index) => ({
    bolt,
    angle,
    radius,
    at: pointAt(layout, spread[index] ?? angle, layout.calloutCircle),
  }));
}

function drawCallouts(drawing: PlanDrawing, bolts: readonly PlanBolt[]): string {
  const { input, layout } = drawing;
  const callouts = placeCallouts(drawing, bolts);
  const leaders = callouts.map(({ angle, at }) => {
    const foot = pointAt(layout, angle, layout.boltCircle - layout.boltRadius);
    return element('line', {
      x1: foot.x,
      y1: foot.y,
      x2: at.x,
      y2: at.y,
      stroke: input.palette.accent,
      'stroke-width': Math.max(0.8, input.size * 0.0025),
    });
  });
  return [...leaders, ...callouts.map(({ bolt, at, radius }) => drawDisc(drawing, bolt, at, radius, true))].join('');
}

// Full length is 125 % of the target; a longer bar is cut and closed with a bar across in the stop colour.
function drawLoad({ input, layout, angleOf }: PlanDrawing, bolt: PlanBolt): string {
  if (bolt.loadPercent === undefined) return '';
  const angle = angleOf(bolt.clockwiseIndex);
  const start = layout.boltCircle + layout.boltRadius + input.size * 0.008;
  const room = layout.rim - input.size * 0.008 - start;
  const over = bolt.loadPercent > 125;
  const end = start + room * (over ? 1 : bolt.loadPercent / 125);
  const width = Math.max(1, Math.min(layout.boltRadius * 0.55, input.size * 0.014));
  const stroke = over ? input.palette.stop : input.palette.rampMiddle;
  const from = pointAt(layout, angle, start);
  const to = pointAt(layout, angle, end);
  const bar = element('line', {
    x1: from.x,
    y1: from.y,
    x2: to.x,
    y2: to.y,
    stroke,
    'stroke-width': width,
  });
  if (!over) return bar;
  const half = (width * 1.4) / layout.rim;
  const one = pointAt(layout, angle - half, end);
  const other = pointAt(layout, angle + half, end);
  return (
    bar +
    element('line', {
      x1: one.x,
      y1: one.y,
      x2: other.x,
      y2: other.y,
      stroke,
      'stroke-width': width * 0.7,
    })
  );
}
