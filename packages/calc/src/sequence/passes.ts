import { crossOrder, quadrantOrder, spreadSets, toolSets } from './cross-order.ts';
import { DEFAULT_PASS_PERCENTS, type SequenceRequest } from './request.ts';

/** Bolts by clockwise number, tightened together or one after another. */
export type Step = readonly number[];

export interface PlannedPass {
  readonly percent: number;
  readonly kind: 'pattern' | 'final-round' | 'relaxation';
  readonly steps: readonly Step[];
}

const clockwise = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

function chunks(bolts: readonly number[], size: number): readonly Step[] {
  const steps: Step[] = [];
  for (let start = 0; start < bolts.length; start += size) steps.push(bolts.slice(start, start + size));
  return steps;
}

/** Steps of one whole visit of the pattern, in clockwise numbers. */
export function patternSteps(request: SequenceRequest): readonly Step[] {
  const { boltCount, pattern } = request;
  const tools = request.tools ?? 1;
  if (pattern === 'simultaneous-circular') return toolSets(boltCount, tools);
  if (pattern === 'simultaneous') {
    const sets = toolSets(boltCount, tools);
    // A shorter last set exists when the tools do not divide the bolts; it is visited last.
    const order = spreadSets(sets.length);
    return order.map((index) => sets[index] ?? []).sort((a, b) => b.length - a.length);
  }
  const group = request.group ?? 1;
  const places = boltCount / group;
  const order =
    pattern === 'circular'
      ? clockwise(places)
      : pattern === 'quadrant'
        ? quadrantOrder(places)
        : crossOrder(places).order;
  if (group === 1) return chunks(order, tools);
  return order.map((place) => Array.from({ length: group }, (_, i) => (place - 1) * group + i + 1));
}

/** Clockwise round of every bolt; several tools stay equally spaced. */
export function roundSteps(request: SequenceRequest): readonly Step[] {
  const tools = request.tools ?? 1;
  return tools === 1 ? clockwise(request.boltCount).map((bolt) => [bolt]) : toolSets(request.boltCount, tools);
}

/** First four of the cross order that carry the flange in the circular pattern. */
function leadingSteps(request: SequenceRequest): readonly Step[] {
  const group = request.group ?? 1;
  const places = crossOrder(request.boltCount / group).order.slice(0, 4);
  return places.map((place) => Array.from({ length: group }, (_, i) => (place - 1) * group + i + 1));
}

/**
 * Modified legacy: one visit of the cross order while the percent rises: each rising percent takes the next four
 * places, the rest goes to 100 %. A pattern too short for that starts again at its first place.
 */
function modifiedPasses(steps: readonly Step[], percents: readonly number[], perFour: number): PlannedPass[] {
  const passes: PlannedPass[] = [];
  let next = 0;
  for (const percent of percents) {
    if (next >= steps.length) next = 0;
    const end = percent === 100 ? steps.length : Math.min(next + perFour, steps.length);
    passes.push({ percent, kind: 'pattern', steps: steps.slice(next, end) });
    next = end;
  }
  return passes;
}

/** All passes of tightening, in clockwise numbers, without the final round and the relaxation pass. */
function patternPasses(request: SequenceRequest): PlannedPass[] {
  const percents = request.passPercents ?? DEFAULT_PASS_PERCENTS;
  const steps = patternSteps(request);
  switch (request.pattern) {
    case 'modified-legacy':
      return modifiedPasses(steps, percents, Math.max(1, Math.round(4 / (request.tools ?? 1))));
    case 'circular':
    case 'simultaneous-circular': {
      const leading = request.pattern === 'circular' ? leadingSteps(request) : steps.slice(0, 1);
      return [
        ...percents.map(
          (percent): PlannedPass => ({
            percent,
            kind: 'pattern',
            steps: leading,
          }),
        ),
        { percent: 100, kind: 'pattern', steps },
      ];
    }
    default:
      return percents.map((percent) => ({ percent, kind: 'pattern', steps }));
  }
}

/** Tightening: passes of the pattern, the final round, the relaxation pass. */
export function tighteningPasses(request: SequenceRequest): readonly PlannedPass[] {
  const round = roundSteps(request);
  const passes: PlannedPass[] = [...patternPasses(request), { percent: 100, kind: 'final-round', steps: round }];
  if (request.relaxation !== false) passes.push({ percent: 100, kind: 'relaxation', steps: round });
  return passes;
}

/** Loosening: the whole pattern backwards in every pass; the percent is the load left, ending at 0. */
export function looseningPasses(request: SequenceRequest): readonly PlannedPass[] {
  const percents = request.passPercents ?? DEFAULT_PASS_PERCENTS;
  const left = [...percents.slice(0, -1).reverse(), 0];
  const steps = reversed(patternSteps(request));
  return left.map((percent) => ({ percent, kind: 'pattern', steps }));
}

/** Steps backwards, and the bolts within each step too. */
export function reversed(steps: readonly Step[]): readonly Step[] {
  return steps.map((step) => [...step].reverse()).reverse();
}
