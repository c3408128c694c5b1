import { CalcRefusal, DEFAULT_PASS_PERCENTS, findFlange, type RefusalItem } from '@seatwell/calc';
import { readPasses } from '../calculator/inputs.ts';
import { readChoice, readWay, type SimulationInput, type SimulationInputs } from './choices.ts';
import type { ComputedJob } from './computed-answer.ts';
import type { SimulationJob } from './run-simulation.ts';

/** The job of the inputs, or why there is none yet. */
export interface PreparedJob {
  readonly job: SimulationJob | undefined;
  readonly boltCount: number | undefined;
  readonly refused: readonly RefusalItem[] | undefined;
}

const usualLimit_percent = 10;

/** Brings the inputs of the address to a job; flange, gasket family and target stress are needed. */
export function jobOf(inputs: SimulationInputs): PreparedJob {
  const { standard, size, rating, family } = inputs;
  const number = (name: SimulationInput) => {
    const value = Number(inputs[name]);
    return inputs[name] === undefined || !Number.isFinite(value) ? undefined : value;
  };
  const none = { job: undefined, boltCount: undefined, refused: undefined };
  if (standard === undefined || size === undefined || rating === undefined) return none;
  const asked = number('boltCount');
  const key = { standard, size, rating, ...(asked === undefined ? {} : { boltCount: asked }) };
  let boltCount: number;
  try {
    boltCount = findFlange(key).boltCount;
  } catch (error) {
    if (error instanceof CalcRefusal) return { ...none, refused: error.errors };
    throw error;
  }
  const target_MPa = number('stress_MPa');
  if (family === undefined || target_MPa === undefined) return { ...none, boltCount };
  const inside = number('contactInside_mm');
  const outside = number('contactOutside_mm');
  const job: SimulationJob = {
    joint: {
      ...key,
      kind: inputs.kind === 'weld-neck-to-blind' ? 'weld-neck-to-blind' : 'weld-neck-pair',
      gasket: {
        family,
        ...(inside === undefined ? {} : { contactInside_mm: inside }),
        ...(outside === undefined ? {} : { contactOutside_mm: outside }),
      },
    },
    target_MPa,
    area: inputs.area === 'root' ? 'root' : 'tensile',
    choices: [readChoice(inputs.first, 'legacy'), readWay(inputs.second, 'circular')],
    passPercents: inputs.passes === undefined ? DEFAULT_PASS_PERCENTS : readPasses(inputs.passes),
    scatter_percent: number('scatter_percent'),
    tilt_mm: number('tilt_mm'),
    limit_percent: number('limit_percent') ?? usualLimit_percent,
    toolsAtOnce: number('toolsAtOnce') ?? 1,
    computed: computedOf(inputs, number),
  };
  return { job, boltCount, refused: undefined };
}

const USUAL_SET_VALUES = 3;

/** The inputs of the computed loads, or undefined while one of them is missing: a cap is never assumed. */
function computedOf(
  inputs: SimulationInputs,
  number: (name: SimulationInput) => number | undefined,
): ComputedJob | undefined {
  const { grade } = inputs;
  const nutFactor = number('nutFactor');
  const share_percent = number('boltShare_percent');
  const scatter_percent = number('scatter_percent');
  const division_Nm = number('division_Nm');
  if (grade === undefined || nutFactor === undefined || share_percent === undefined) return undefined;
  if (scatter_percent === undefined || division_Nm === undefined) return undefined;
  return {
    grade,
    nutFactor,
    boltShare: share_percent / 100,
    scatter_percent,
    gasketMaximum_MPa: number('gasketMaximum_MPa'),
    division_Nm,
    setValues: number('setValues') ?? USUAL_SET_VALUES,
  };
}
