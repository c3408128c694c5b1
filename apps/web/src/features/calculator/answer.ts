import {
  CalcRefusal,
  type Explained,
  type RefusalItem,
  type TargetAnswer,
  type TighteningSequence,
  targetWindow,
  tighteningSequence,
} from '@seatwell/calc';
import { type InputName, type Inputs, numberIn } from './inputs.ts';
import { lookUp, missingInputs, sequenceRequest, targetRequest } from './request.ts';

type Refused = { readonly refused: readonly RefusalItem[] };

/** What the inputs come to. Each part stands for itself: a sequence needs no gasket. */
export interface CalculatorAnswer {
  readonly missing: readonly InputName[];
  readonly target: (TargetAnswer & Explained) | Refused | undefined;
  readonly sequence: TighteningSequence | Refused | undefined;
}

/** Calculates target and sequence, as far as the inputs go. */
export function calculate(inputs: Inputs): CalculatorAnswer {
  const missing = missingInputs(inputs);
  const boltCount = lookUp(inputs).flange?.boltCount ?? numberIn(inputs, 'boltCount');
  return {
    missing,
    target: missing.length > 0 ? undefined : refusalOr(() => targetWindow(targetRequest(inputs))),
    sequence:
      boltCount === undefined ? undefined : refusalOr(() => tighteningSequence(sequenceRequest(inputs, boltCount))),
  };
}

export function isRefused(answer: object): answer is Refused {
  return 'refused' in answer;
}

function refusalOr<Answer>(run: () => Answer): Answer | Refused {
  try {
    return run();
  } catch (error) {
    if (error instanceof CalcRefusal) return { refused: error.errors };
    throw error;
  }
}

const inputOfPath: Readonly<Record<string, InputName>> = {
  'gasket.contactOutside_mm': 'contactOutside_mm',
  'gasket.contactInside_mm': 'contactInside_mm',
  'gasket.count': 'gasketCount',
  'gasket.limits.seating_MPa': 'seating_MPa',
  'gasket.limits.operating_MPa': 'operating_MPa',
  'gasket.limits.target_MPa': 'target_MPa',
  'gasket.limits.maximum_MPa': 'maximum_MPa',
  'gasket.family': 'family',
  'service.pressure_MPa': 'pressure_MPa',
  'service.temperature_C': 'temperature_C',
  'service.testPressure_MPa': 'testPressure_MPa',
  'service.axialForce_N': 'axialForce_N',
  'service.moment_Nm': 'moment_Nm',
  'policy.minimumBoltUtilisation': 'leastShare_percent',
  'policy.maximumBoltUtilisation': 'mostShare_percent',
  'policy.scatter_percent': 'scatter_percent',
  'target.boltStress_MPa': 'boltStress_MPa',
  'flange.maximumBoltStress_MPa': 'flangeMaximum_MPa',
  'lubricant.nutFactor': 'nutFactor',
  'lubricant.threadFriction': 'threadFriction',
  'lubricant.bearingFriction': 'bearingFriction',
  'bolting.count': 'boltCount',
  boltCount: 'boltCount',
  grade: 'grade',
  passPercents: 'passes',
  pattern: 'pattern',
  tools: 'tools',
  group: 'group',
  pairs: 'pairs',
};

/** The input that a refusal is about, where it is about one. */
export function inputOf({ path }: Pick<RefusalItem, 'path'>): InputName | undefined {
  return inputOfPath[path];
}
