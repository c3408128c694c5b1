import { type Explained, explained, stepsFor } from '../working.ts';
import { patternCautions } from './cautions.ts';
import { looseningPasses, patternSteps, reversed, type Step, tighteningPasses } from './passes.ts';
import { checkSequenceRequest, type SequenceRequest } from './request.ts';

export interface BoltPosition {
  /** Number on the flange in the requested numbering. */
  readonly label: number;
  /** 1 at the datum, clockwise as seen from where the plan is viewed. */
  readonly clockwiseIndex: number;
  /** Clockwise from the datum as seen from where the plan is viewed. */
  readonly angle_deg: number;
}

export interface SequencePass {
  /** Share of the target; for loosening the share left. */
  readonly percent: number;
  readonly kind: 'pattern' | 'final-round' | 'relaxation';
  readonly steps: readonly (readonly number[])[];
}

export interface TighteningSequence extends Explained {
  /** One whole visit of the pattern, in labels. */
  readonly order: readonly (readonly number[])[];
  readonly passes: readonly SequencePass[];
  readonly positions: readonly BoltPosition[];
  /** Number of times that a tool is set on a nut, all passes together. */
  readonly moves: number;
}

/** Label of each clockwise number. */
function labelsOf(request: SequenceRequest, steps: readonly Step[]): ReadonlyMap<number, number> {
  const inOrder = request.numbering === 'order' ? steps.flat() : undefined;
  const labels = new Map<number, number>();
  for (let bolt = 1; bolt <= request.boltCount; bolt++) labels.set(bolt, bolt);
  inOrder?.forEach((bolt, i) => {
    labels.set(bolt, i + 1);
  });
  return labels;
}

function positionsOf(request: SequenceRequest, labels: ReadonlyMap<number, number>): readonly BoltPosition[] {
  const { boltCount } = request;
  const mirrored = request.viewedFrom === 'other-side';
  const positions = [...labels].map(([bolt, label]) => {
    const fromDatum = mirrored ? (boltCount - (bolt - 1)) % boltCount : bolt - 1;
    return {
      label,
      clockwiseIndex: fromDatum + 1,
      angle_deg: (fromDatum * 360) / boltCount,
    };
  });
  return positions.sort((a, b) => a.clockwiseIndex - b.clockwiseIndex);
}

/**
 * Tightening or loosening sequence of a joint: order, passes with final round and relaxation pass, positions, moves.
 *
 * Source: ASME PCC-1-2013 and 2019 patterns (from memory); counts without a list by a rule of ours, warned.
 * - legacy: the cross order in every pass. modified-legacy: one cross visit with rising percent. quadrant: one bolt a
 *   quadrant, stepping round. circular: four bolts at 90° through all percents, then clockwise at 100 %.
 * - simultaneous: equally spaced tools, sets taken apart from each other, all sets in every pass.
 *   simultaneous-circular: the first set through all percents, then the tools step clockwise at 100 %.
 * - The final round is clockwise at 100 % and is repeated until no nut moves; the relaxation pass repeats it after at
 *   least 4 h, for gaskets that creep and only where the gasket allows it.
 * - Labels are on the flange as seen from the viewing side; `viewedFrom: other-side` mirrors positions, not labels.
 * @param input.boltCount 4 to 200
 * @param input.passPercents rising, ending at 100, percent of the target
 * @throws CalcRefusal as checkSequenceRequest
 * @example tighteningSequence({ boltCount: 8, pattern: 'legacy', numbering: 'clockwise' }).order.flat() // 1 5 3 7 2 6 4 8
 */
export function tighteningSequence(input: SequenceRequest): TighteningSequence {
  checkSequenceRequest(input);
  const steps = patternSteps(input);
  const labels = labelsOf(input, steps);
  const inLabels = (step: Step) => step.map((bolt) => labels.get(bolt) ?? bolt);
  const planned = input.reverse === true ? looseningPasses(input) : tighteningPasses(input);
  const order = (input.reverse === true ? reversed(steps) : steps).map(inLabels);
  const passes = planned.map((pass) => ({
    ...pass,
    steps: pass.steps.map(inLabels),
  }));
  const bolts = passes.map((pass) => pass.steps.reduce((sum, step) => sum + step.length, 0));
  const moves = bolts.reduce((sum, count) => sum + count, 0);
  const working = stepsFor(input);
  working?.push(
    {
      symbol: 'φ',
      meaning: 'angle between neighbouring bolts',
      formula: '360/n',
      substituted: `360 / ${input.boltCount}`,
      value: 360 / input.boltCount,
      unit: '°',
      source: 'geometry',
    },
    {
      symbol: 'moves',
      meaning: 'times that a tool is set on a nut, pass by pass',
      formula: 'sum of the bolts of each pass',
      substituted: bolts.join(' + '),
      value: moves,
      unit: '',
      source: 'count of the steps',
    },
  );
  return explained({ order, passes, positions: positionsOf(input, labels), moves }, patternCautions(input), working);
}
