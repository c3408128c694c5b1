import type { PlanDrawing, PlanGroup } from './bolt-plan-svg.ts';
import { pointAt } from './layout.ts';
import { centredText, element, rounded } from './svg-text.ts';

/** Brackets the groups of a large flange between bolts and rim, the current one heavier. */
export function drawGroups(drawing: PlanDrawing): string {
  return (drawing.input.groups ?? []).map((group) => drawGroup(drawing, group)).join('');
}

function drawGroup({ input, layout, angleOf }: PlanDrawing, group: PlanGroup): string {
  const count = input.bolts.length;
  for (const place of [group.firstClockwiseIndex, group.lastClockwiseIndex]) {
    if (!Number.isInteger(place) || place < 1 || place > count) {
      throw new RangeError(`Group ${group.label} reaches place ${place}; places run from 1 to ${count}.`);
    }
  }
  // A group may run across the datum: its end then has the smaller number.
  const bolts = ((group.lastClockwiseIndex - group.firstClockwiseIndex + count) % count) + 1;
  const first = angleOf(group.firstClockwiseIndex - 0.32);
  const last = angleOf(group.firstClockwiseIndex + bolts - 1 + 0.32);
  const arc = layout.boltCircle + layout.boltRadius + input.size * 0.018;
  const tick = arc - input.size * 0.012;
  const corners = [
    pointAt(layout, first, tick),
    pointAt(layout, first, arc),
    pointAt(layout, last, arc),
    pointAt(layout, last, tick),
  ].map(({ x, y }) => `${rounded(x)} ${rounded(y)}`);
  const large = Math.abs(last - first) > Math.PI ? 1 : 0;
  const sweep = last > first ? 1 : 0;
  const colour = group.current ? input.palette.accent : input.palette.inkSoft;
  const bracket = element('path', {
    d: `M${corners[0]}L${corners[1]}A${rounded(arc)} ${rounded(arc)} 0 ${large} ${sweep} ${corners[2]}L${corners[3]}`,
    fill: 'none',
    stroke: colour,
    'stroke-width': Math.max(1, input.size * (group.current ? 0.009 : 0.003)),
  });
  const size = Math.min(Math.max(10, input.size * 0.032), (layout.rim - arc) * 0.86);
  const at = pointAt(layout, (first + last) / 2, (arc + layout.rim) / 2 + input.size * 0.002);
  return (
    bracket +
    centredText(group.label, at, size, {
      fill: colour,
      'font-weight': group.current ? 720 : 520,
    })
  );
}
