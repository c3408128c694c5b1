import {
  CalcRefusal,
  DEFAULT_PASS_PERCENTS,
  type Flange,
  findFlange,
  findGasketDimensions,
  type GasketDimensions,
  type RefusalItem,
  SEQUENCE_PATTERNS,
  type SequencePattern,
  type SequenceRequest,
  type TargetRequest,
  TIGHTENING_METHODS,
  type TighteningMethod,
} from '@seatwell/calc';
import { given } from './given.ts';
import { type InputName, type Inputs, numberIn, readChart, readPasses } from './inputs.ts';
import { coatingOf, contactOf, rotationOf, strengthOf, thermalOf, washersOf } from './limits-request.ts';

/** What is looked up for the inputs, so that the screen can show it beside them. */
export interface LookedUp {
  readonly flange: Flange | undefined;
  /** why the flange was not found: words of the calculation */
  readonly flangeRefused: readonly RefusalItem[] | undefined;
  readonly gasket: GasketDimensions | undefined;
}

/** Looks the flange and its standard gasket up, as far as the inputs name them. */
export function lookUp(inputs: Inputs): LookedUp {
  const { standard, size, rating, family } = inputs;
  const none = { flange: undefined, flangeRefused: undefined, gasket: undefined };
  if (standard === undefined || standard === 'custom' || size === undefined || rating === undefined) return none;
  const boltCount = numberIn(inputs, 'boltCount');
  try {
    const flange = findFlange({ standard, size, rating, ...(boltCount === undefined ? {} : { boltCount }) });
    const gasket = family === undefined ? undefined : findGasketDimensions({ standard, size, rating, family });
    return { flange, flangeRefused: undefined, gasket };
  } catch (error) {
    if (!(error instanceof CalcRefusal)) throw error;
    return { ...none, flangeRefused: error.errors };
  }
}

function flangeOf(inputs: Inputs): TargetRequest['flange'] {
  const boltCount = numberIn(inputs, 'boltCount');
  const ceiling = {
    ...given('maximumBoltStress_MPa', numberIn(inputs, 'flangeMaximum_MPa')),
    ...given('maximumBoltStressSource', inputs.flangeMaximumSource),
    ...given('strength', strengthOf(inputs)),
    ...given('rotation', rotationOf(inputs)),
  };
  if (inputs.standard === 'custom') {
    return {
      custom: {
        boltCount: boltCount ?? Number.NaN,
        boltThread: inputs.thread ?? '',
        ...given('boltHole_mm', numberIn(inputs, 'hole_mm')),
      },
      ...ceiling,
    };
  }
  return {
    standard: inputs.standard ?? '',
    size: inputs.size ?? '',
    rating: inputs.rating ?? '',
    ...given('boltCount', boltCount),
    ...ceiling,
  };
}

function toolOf(inputs: Inputs): TargetRequest['tool'] {
  const pairs = readChart(inputs.pairs);
  const division = numberIn(inputs, 'gaugeDivision_MPa');
  return {
    ...(pairs.length > 0 && division !== undefined ? { wrench: { pairs, gaugeDivision_MPa: division } } : {}),
    ...given('hydraulicArea_mm2', numberIn(inputs, 'hydraulicArea_mm2')),
  };
}

/**
 * The request of `POST /api/v1/calc/target` for the inputs.
 * Missing numbers become NaN, which the calculation refuses by name: ask `missingInputs` first.
 */
export function targetRequest(inputs: Inputs): TargetRequest {
  const { gasket } = lookUp(inputs);
  const number = (name: InputName) => numberIn(inputs, name) ?? Number.NaN;
  const grip = numberIn(inputs, 'grip_mm');
  const stress = numberIn(inputs, 'boltStress_MPa');
  const condition = inputs.condition === 'new' || inputs.condition === 'coated' ? inputs.condition : 'reused';
  return {
    flange: flangeOf(inputs),
    ...(grip === undefined ? {} : { clampedParts: [{ kind: 'stack', thickness_mm: grip }] }),
    gasket: {
      family: inputs.family ?? '',
      ...contactOf(inputs, gasket),
      ...given('count', numberIn(inputs, 'gasketCount')),
      ...given('ribArea_mm2', numberIn(inputs, 'ribArea_mm2')),
      limits: {
        seating_MPa: number('seating_MPa'),
        operating_MPa: number('operating_MPa'),
        target_MPa: number('target_MPa'),
        maximum_MPa: number('maximum_MPa'),
        source: inputs.gasketSource ?? '',
      },
    },
    bolting: {
      grade: inputs.grade ?? '',
      condition,
      ...given('thread', inputs.standard === 'custom' ? undefined : inputs.thread),
      ...given('yield_MPa', numberIn(inputs, 'yield_MPa')),
      ...given('yieldSource', inputs.yieldSource),
      ...given('elasticModulus_MPa', numberIn(inputs, 'elasticModulus_MPa')),
      ...given('nut', inputs.nut),
      ...coatingOf(inputs),
      ...given('washers', washersOf(inputs)),
    },
    service: {
      pressure_MPa: number('pressure_MPa'),
      temperature_C: number('temperature_C'),
      ...given('testPressure_MPa', numberIn(inputs, 'testPressure_MPa')),
      ...given('axialForce_N', numberIn(inputs, 'axialForce_N')),
      ...given('moment_Nm', numberIn(inputs, 'moment_Nm')),
      ...given('thermal', thermalOf(inputs)),
    },
    lubricant:
      inputs.friction === 'friction'
        ? {
            threadFriction: number('threadFriction'),
            bearingFriction: number('bearingFriction'),
            source: inputs.lubricantSource ?? '',
          }
        : { nutFactor: number('nutFactor'), source: inputs.lubricantSource ?? '' },
    method: TIGHTENING_METHODS.find((method) => method === inputs.method) ?? ('' as TighteningMethod),
    area: inputs.area === 'root' ? 'root' : 'tensile',
    policy: {
      minimumBoltUtilisation: number('leastShare_percent') / 100,
      maximumBoltUtilisation: number('mostShare_percent') / 100,
      ...given('scatter_percent', numberIn(inputs, 'scatter_percent')),
    },
    ...(stress === undefined ? {} : { target: { boltStress_MPa: stress } }),
    tool: toolOf(inputs) ?? {},
    ...(inputs.passes === undefined ? {} : { passPercents: readPasses(inputs.passes) }),
    working: true,
  };
}

/** The request of `POST /api/v1/calc/sequence` for the inputs and a count of bolts. */
export function sequenceRequest(inputs: Inputs, boltCount: number): SequenceRequest {
  const tools = numberIn(inputs, 'tools');
  const group = numberIn(inputs, 'group');
  return {
    boltCount,
    pattern: SEQUENCE_PATTERNS.find((pattern) => pattern === inputs.pattern) ?? ('legacy' satisfies SequencePattern),
    numbering: inputs.numbering === 'order' ? 'order' : 'clockwise',
    passPercents: inputs.passes === undefined ? DEFAULT_PASS_PERCENTS : readPasses(inputs.passes),
    ...given('tools', tools),
    ...given('group', group),
    viewedFrom: inputs.side === 'other-side' ? 'other-side' : 'viewing-side',
  };
}
