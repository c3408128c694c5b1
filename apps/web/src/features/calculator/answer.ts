import {
  CalcRefusal,
  type Explained,
  findNut,
  type RefusalItem,
  type Sensitivity,
  studLength,
  type TargetAnswer,
  type TighteningSequence,
  targetSensitivities,
  targetWindow,
  tighteningSequence,
  washerOf,
} from '@seatwell/calc';
import { type InputName, type Inputs, numberIn } from './inputs.ts';
import { missingInputs } from './missing-inputs.ts';
import { lookUp, sequenceRequest, targetRequest } from './request.ts';

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

/** The studs of the joint, where the clamped length is entered: their length holds washers and nuts. */
export function studsOf(
  inputs: Inputs,
): { readonly count: number; readonly thread: string; readonly length_mm: number } | undefined {
  const { flange, clampedParts, bolting } = targetRequest(inputs);
  const found = lookUp(inputs).flange;
  const thread = bolting.thread ?? ('custom' in flange ? flange.custom.boltThread : found?.boltThread);
  const count = 'custom' in flange ? flange.custom.boltCount : found?.boltCount;
  if (clampedParts === undefined || thread === undefined || count === undefined) return undefined;
  const { washers } = bolting;
  const washer_mm = washers === undefined ? 0 : washerOf({ thread, ...washers }).washer.thickness_mm * washers.perBolt;
  const nut_mm = findNut({ thread })?.height_mm;
  const { length_mm } = studLength({
    thread,
    clampedParts,
    washers_mm: washer_mm,
    ...(nut_mm === undefined ? {} : { nutHeight_mm: nut_mm }),
  });
  return { count, thread, length_mm };
}

/** How window and target answer to each input; asked for only when somebody wants to see it. */
export function sensitivitiesOf(inputs: Inputs): readonly Sensitivity[] | Refused {
  return refusalOr(() => targetSensitivities({ request: targetRequest(inputs) }));
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
  'flange.strength.outsideDiameter_mm': 'outside_mm',
  'flange.strength.insideDiameter_mm': 'inside_mm',
  'flange.strength.boltCircle_mm': 'boltCircle_mm',
  'flange.strength.thickness_mm': 'thickness_mm',
  'flange.strength.hub': 'hubLength_mm',
  'flange.strength.hub.length_mm': 'hubLength_mm',
  'flange.strength.hub.smallThickness_mm': 'hubSmall_mm',
  'flange.strength.hub.largeThickness_mm': 'hubLarge_mm',
  'flange.rotation.gasketLimit_deg': 'rotationLimit_deg',
  'flange.rotation.flangeAtMaximum_deg': 'rotationAtMaximum_deg',
  'flange.rotation.source': 'rotationSource',
  'gasket.ribArea_mm2': 'ribArea_mm2',
  'ring.pitchDiameter_mm': 'ringPitch_mm',
  'ring.width_mm': 'ringWidth_mm',
  'bolting.nut': 'nut',
  'bolting.coating': 'coating',
  'bolting.coatingMaximum_C': 'coatingMaximum_C',
  'bolting.coatingSource': 'coatingSource',
  'bolting.washers': 'washersPerBolt',
  'bolting.washers.insideDiameter_mm': 'washerInside_mm',
  'bolting.washers.outsideDiameter_mm': 'washerOutside_mm',
  'bolting.washers.thickness_mm': 'washerThickness_mm',
  'service.thermal.assemblyTemperature_C': 'assembly_C',
  'service.thermal.boltExpansion_perK': 'boltExpansion_ppmK',
  'service.thermal.flangeExpansion_perK': 'flangeExpansion_ppmK',
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
