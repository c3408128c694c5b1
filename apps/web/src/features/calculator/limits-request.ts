import { type GasketDimensions, ringJoint, type TargetRequest, type ThermalInput } from '@seatwell/calc';
import { given } from './given.ts';
import { type InputName, type Inputs, numberIn } from './inputs.ts';

const PER_MILLION = 1e-6;
const NEWTON_PER_KILONEWTON = 1000;

const required = (inputs: Inputs, name: InputName) => numberIn(inputs, name) ?? Number.NaN;

/** Dimensions and allowables of the flange for the stresses of the code, where its kind is chosen. */
export function strengthOf(inputs: Inputs): TargetRequest['flange']['strength'] {
  const { strengthKind } = inputs;
  if (strengthKind !== 'integral' && strengthKind !== 'loose') return undefined;
  const hub = ['hubLength_mm', 'hubSmall_mm', 'hubLarge_mm'] as const;
  return {
    kind: strengthKind,
    ...given('outsideDiameter_mm', numberIn(inputs, 'outside_mm')),
    ...given('insideDiameter_mm', numberIn(inputs, 'inside_mm')),
    ...given('boltCircle_mm', numberIn(inputs, 'boltCircle_mm')),
    ...given('thickness_mm', numberIn(inputs, 'thickness_mm')),
    ...(hub.some((name) => inputs[name] !== undefined)
      ? {
          hub: {
            length_mm: required(inputs, 'hubLength_mm'),
            smallThickness_mm: required(inputs, 'hubSmall_mm'),
            largeThickness_mm: required(inputs, 'hubLarge_mm'),
          },
        }
      : {}),
    allowableAmbient_MPa: required(inputs, 'allowableAmbient_MPa'),
    allowableOperating_MPa: required(inputs, 'allowableOperating_MPa'),
    elasticModulusAmbient_MPa: required(inputs, 'modulusAmbient_MPa'),
    elasticModulusOperating_MPa: required(inputs, 'modulusOperating_MPa'),
    source: inputs.strengthSource ?? '',
  };
}

/** The rotation that the gasket bears. */
export function rotationOf(inputs: Inputs): TargetRequest['flange']['rotation'] {
  const gasketLimit_deg = numberIn(inputs, 'rotationLimit_deg');
  if (gasketLimit_deg === undefined) return undefined;
  return {
    gasketLimit_deg,
    ...given('flangeAtMaximum_deg', numberIn(inputs, 'rotationAtMaximum_deg')),
    source: inputs.rotationSource ?? '',
  };
}

/** Where the gasket touches: entered, of its standard, or from the ring that was entered. */
export function contactOf(
  inputs: Inputs,
  gasket: GasketDimensions | undefined,
): Pick<TargetRequest['gasket'], 'contactInside_mm' | 'contactOutside_mm'> {
  if (inputs.family === 'ring-joint') {
    const { contactInside_mm, contactOutside_mm } = ringJoint({
      ring: {
        pitchDiameter_mm: required(inputs, 'ringPitch_mm'),
        width_mm: required(inputs, 'ringWidth_mm'),
        source: inputs.ringSource ?? '',
      },
    });
    return { contactInside_mm, contactOutside_mm };
  }
  return {
    contactInside_mm: numberIn(inputs, 'contactInside_mm') ?? gasket?.contactInside_mm ?? Number.NaN,
    contactOutside_mm: numberIn(inputs, 'contactOutside_mm') ?? gasket?.contactOutside_mm ?? Number.NaN,
  };
}

/** Coating with its own temperature limit, where there is one. */
export function coatingOf(
  inputs: Inputs,
): Pick<TargetRequest['bolting'], 'coating' | 'coatingMaximum_C' | 'coatingSource'> {
  return {
    ...given('coating', inputs.coating),
    ...given('coatingMaximum_C', numberIn(inputs, 'coatingMaximum_C')),
    ...given('coatingSource', inputs.coatingSource),
  };
}

/** Washers under one nut of each bolt or under both. */
export function washersOf(inputs: Inputs): TargetRequest['bolting']['washers'] {
  const { washersPerBolt } = inputs;
  if (washersPerBolt !== '1' && washersPerBolt !== '2') return undefined;
  return {
    perBolt: washersPerBolt === '1' ? 1 : 2,
    ...given('insideDiameter_mm', numberIn(inputs, 'washerInside_mm')),
    ...given('outsideDiameter_mm', numberIn(inputs, 'washerOutside_mm')),
    ...given('thickness_mm', numberIn(inputs, 'washerThickness_mm')),
  };
}

function stiffnessOf(inputs: Inputs): ThermalInput['stiffness'] {
  const flanges = numberIn(inputs, 'flangeStiffness_kNmm');
  const gaskets = numberIn(inputs, 'gasketStiffness_kNmm');
  if (flanges === undefined || gaskets === undefined) return undefined;
  return {
    flanges_N_per_mm: flanges * NEWTON_PER_KILONEWTON,
    gaskets_N_per_mm: gaskets * NEWTON_PER_KILONEWTON,
    source: inputs.stiffnessSource ?? '',
  };
}

/** The states in which bolts and flanges differ in temperature: one going up, one coming down. */
export function thermalOf(inputs: Inputs): TargetRequest['service']['thermal'] {
  const states = (['start', 'cool'] as const).flatMap((name) => {
    const boltTemperature_C = numberIn(inputs, `${name}Bolt_C`);
    const flangeTemperature_C = numberIn(inputs, `${name}Flange_C`);
    return boltTemperature_C === undefined || flangeTemperature_C === undefined
      ? []
      : [{ name, boltTemperature_C, flangeTemperature_C }];
  });
  if (states.length === 0) return undefined;
  return {
    assemblyTemperature_C: required(inputs, 'assembly_C'),
    states,
    boltExpansion_perK: required(inputs, 'boltExpansion_ppmK') * PER_MILLION,
    flangeExpansion_perK: required(inputs, 'flangeExpansion_ppmK') * PER_MILLION,
    source: inputs.expansionSource ?? '',
    ...given('stiffness', stiffnessOf(inputs)),
  };
}
