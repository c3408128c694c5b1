import type { JointSpecification } from '@seatwell/contract';
import type { JointState } from '@seatwell/workflow';

const PER_MILLION = 1e-6;
const NEWTON_PER_KILONEWTON = 1000;

export const LOADS = ['axialForce_N', 'moment_Nm'] as const;
export const PAIRS = ['startBolt_C', 'startFlange_C', 'coolBolt_C', 'coolFlange_C'] as const;
export const STIFFNESSES = ['flangeStiffness_kNmm', 'gasketStiffness_kNmm'] as const;
export const RING = ['outside_mm', 'inside_mm', 'boltCircle_mm', 'thickness_mm'] as const;
export const HUB = ['hubLength_mm', 'hubSmall_mm', 'hubLarge_mm'] as const;
export const MATERIAL = [
  'allowableAmbient_MPa',
  'allowableOperating_MPa',
  'modulusAmbient_MPa',
  'modulusOperating_MPa',
] as const;

type LimitNumber =
  | 'testPressure_MPa'
  | 'ribArea_mm2'
  | 'assembly_C'
  | 'flangeExpansion_ppmK'
  | 'flangeMaximum_MPa'
  | 'rotationAtMaximum_deg'
  | (typeof LOADS)[number]
  | (typeof PAIRS)[number]
  | (typeof STIFFNESSES)[number]
  | (typeof RING)[number]
  | (typeof HUB)[number]
  | (typeof MATERIAL)[number];
type LimitSource = 'loadSource' | 'expansionSource' | 'stiffnessSource' | 'strengthSource' | 'flangeMaximumSource';

/** What the register may say beyond pressure and temperature, as typed: the fields are called as in the calculator. */
export type JointLimits = { readonly [Name in LimitNumber]?: number | undefined } & {
  readonly [Name in LimitSource]?: string;
} & { readonly strengthKind?: 'integral' | 'loose' | undefined };

const or = <Value>(value: Value | null | undefined): Value | undefined => value ?? undefined;
const perMillion = (perK: number) => Number((perK / PER_MILLION).toPrecision(9));

/** What the register holds, for the form. */
export function limitsOf({ flange, gasket, service }: JointState['specification']): JointLimits {
  const { strength, maximum } = flange;
  const { external, temperatures } = service;
  const stiffness = temperatures?.stiffness;
  return {
    testPressure_MPa: or(service.testPressure_MPa),
    ribArea_mm2: or(gasket.ribArea_mm2),
    axialForce_N: external?.axialForce_N,
    moment_Nm: external?.moment_Nm,
    loadSource: external?.source ?? '',
    assembly_C: temperatures?.assembly_C,
    startBolt_C: temperatures?.goingUp?.bolt_C,
    startFlange_C: temperatures?.goingUp?.flange_C,
    coolBolt_C: temperatures?.comingDown?.bolt_C,
    coolFlange_C: temperatures?.comingDown?.flange_C,
    flangeExpansion_ppmK: temperatures ? perMillion(temperatures.flangeExpansion_perK) : undefined,
    expansionSource: temperatures?.source ?? '',
    flangeStiffness_kNmm: stiffness ? stiffness.flanges_N_per_mm / NEWTON_PER_KILONEWTON : undefined,
    gasketStiffness_kNmm: stiffness ? stiffness.gaskets_N_per_mm / NEWTON_PER_KILONEWTON : undefined,
    stiffnessSource: stiffness?.source ?? '',
    strengthKind: strength?.kind,
    outside_mm: or(strength?.outsideDiameter_mm),
    inside_mm: or(strength?.insideDiameter_mm),
    boltCircle_mm: or(strength?.boltCircle_mm),
    thickness_mm: or(strength?.thickness_mm),
    hubLength_mm: strength?.hub?.length_mm,
    hubSmall_mm: strength?.hub?.smallThickness_mm,
    hubLarge_mm: strength?.hub?.largeThickness_mm,
    allowableAmbient_MPa: strength?.allowableAmbient_MPa,
    allowableOperating_MPa: strength?.allowableOperating_MPa,
    modulusAmbient_MPa: strength?.elasticModulusAmbient_MPa,
    modulusOperating_MPa: strength?.elasticModulusOperating_MPa,
    strengthSource: strength?.source ?? '',
    flangeMaximum_MPa: maximum?.boltStress_MPa,
    rotationAtMaximum_deg: or(maximum?.rotation_deg),
    flangeMaximumSource: maximum?.source ?? '',
  };
}

/** The limits without what belongs to the flange: of another flange it says nothing. */
export function withoutFlange(limits: JointLimits): JointLimits {
  const ofFlange: readonly string[] = [
    ...['strengthKind', 'strengthSource', 'flangeMaximum_MPa', 'rotationAtMaximum_deg', 'flangeMaximumSource'],
    ...RING,
    ...HUB,
    ...MATERIAL,
  ];
  return Object.fromEntries(Object.entries(limits).filter(([name]) => !ofFlange.includes(name)));
}

const said = (limits: JointLimits, names: readonly (keyof JointLimits)[]) =>
  names.filter((name) => limits[name] !== undefined && String(limits[name]).trim() !== '').length;
/** All or none of them. */
const broken = (limits: JointLimits, names: readonly (keyof JointLimits)[]) =>
  said(limits, names) > 0 && said(limits, names) < names.length;

export type LimitsMissing =
  | 'loads-incomplete'
  | 'temperatures-incomplete'
  | 'strength-incomplete'
  | 'flange-maximum-incomplete';

/** What was begun and is not complete, the first of it: half of it would be left out of every target. */
export function limitsMissing(limits: JointLimits, custom: boolean): LimitsMissing | undefined {
  if (broken(limits, [...LOADS, 'loadSource'])) return 'loads-incomplete';
  const [up, down] = [PAIRS.slice(0, 2), PAIRS.slice(2)];
  const base = ['assembly_C', 'flangeExpansion_ppmK', 'expansionSource'] as const;
  const pairs = said(limits, PAIRS);
  if (
    broken(limits, up) ||
    broken(limits, down) ||
    broken(limits, base) ||
    pairs > 0 !== said(limits, base) > 0 ||
    broken(limits, [...STIFFNESSES, 'stiffnessSource']) ||
    (pairs === 0 && said(limits, STIFFNESSES) > 0)
  )
    return 'temperatures-incomplete';
  if (limits.strengthKind !== undefined) {
    const needed = [...MATERIAL, 'strengthSource', ...(custom ? RING : [])] as const;
    if (said(limits, needed) < needed.length || broken(limits, HUB)) return 'strength-incomplete';
    if (custom && limits.strengthKind === 'integral' && said(limits, HUB) === 0) return 'strength-incomplete';
  }
  if (broken(limits, ['flangeMaximum_MPa', 'flangeMaximumSource'])) return 'flange-maximum-incomplete';
  if (limits.rotationAtMaximum_deg !== undefined && limits.flangeMaximum_MPa === undefined)
    return 'flange-maximum-incomplete';
  return undefined;
}

const source = (typed: string | undefined) => (typed ?? '').trim();
const pairOf = (bolt_C: number | undefined, flange_C: number | undefined) =>
  bolt_C === undefined || flange_C === undefined ? null : { bolt_C, flange_C };

function temperaturesOf(limits: JointLimits): JointSpecification['service']['temperatures'] {
  const goingUp = pairOf(limits.startBolt_C, limits.startFlange_C);
  const comingDown = pairOf(limits.coolBolt_C, limits.coolFlange_C);
  const { assembly_C, flangeExpansion_ppmK, flangeStiffness_kNmm, gasketStiffness_kNmm } = limits;
  if (assembly_C === undefined || flangeExpansion_ppmK === undefined || (!goingUp && !comingDown)) return undefined;
  return {
    assembly_C,
    goingUp,
    comingDown,
    flangeExpansion_perK: flangeExpansion_ppmK * PER_MILLION,
    source: source(limits.expansionSource),
    stiffness:
      flangeStiffness_kNmm === undefined || gasketStiffness_kNmm === undefined
        ? null
        : {
            flanges_N_per_mm: flangeStiffness_kNmm * NEWTON_PER_KILONEWTON,
            gaskets_N_per_mm: gasketStiffness_kNmm * NEWTON_PER_KILONEWTON,
            source: source(limits.stiffnessSource),
          },
  };
}

function strengthOf(limits: JointLimits): JointSpecification['flange']['strength'] {
  const { strengthKind, allowableAmbient_MPa, allowableOperating_MPa, modulusAmbient_MPa, modulusOperating_MPa } =
    limits;
  if (strengthKind === undefined || allowableAmbient_MPa === undefined || allowableOperating_MPa === undefined)
    return undefined;
  if (modulusAmbient_MPa === undefined || modulusOperating_MPa === undefined) return undefined;
  const { hubLength_mm, hubSmall_mm, hubLarge_mm } = limits;
  return {
    kind: strengthKind,
    outsideDiameter_mm: limits.outside_mm ?? null,
    insideDiameter_mm: limits.inside_mm ?? null,
    boltCircle_mm: limits.boltCircle_mm ?? null,
    thickness_mm: limits.thickness_mm ?? null,
    hub:
      hubLength_mm === undefined || hubSmall_mm === undefined || hubLarge_mm === undefined
        ? null
        : { length_mm: hubLength_mm, smallThickness_mm: hubSmall_mm, largeThickness_mm: hubLarge_mm },
    allowableAmbient_MPa,
    allowableOperating_MPa,
    elasticModulusAmbient_MPa: modulusAmbient_MPa,
    elasticModulusOperating_MPa: modulusOperating_MPa,
    source: source(limits.strengthSource),
  };
}

/** Only what is said: an empty field must not change what the targets of a joint were calculated from. */
const only = <Part extends object>(part: Part) =>
  Object.fromEntries(Object.entries(part).filter(([, value]) => value !== undefined)) as {
    [Name in keyof Part]?: Exclude<Part[Name], undefined>;
  };

/** What the limits add to the specification that the register keeps. */
export function withLimits(specification: JointSpecification, limits: JointLimits): JointSpecification {
  const { axialForce_N, moment_Nm, flangeMaximum_MPa } = limits;
  return {
    ...specification,
    flange: {
      ...specification.flange,
      ...only({
        strength: strengthOf(limits),
        maximum:
          flangeMaximum_MPa === undefined
            ? undefined
            : {
                boltStress_MPa: flangeMaximum_MPa,
                rotation_deg: limits.rotationAtMaximum_deg ?? null,
                source: source(limits.flangeMaximumSource),
              },
      }),
    },
    gasket: { ...specification.gasket, ...only({ ribArea_mm2: limits.ribArea_mm2 }) },
    service: {
      ...specification.service,
      ...only({
        testPressure_MPa: limits.testPressure_MPa,
        external:
          axialForce_N === undefined || moment_Nm === undefined
            ? undefined
            : { axialForce_N, moment_Nm, source: source(limits.loadSource) },
        temperatures: temperaturesOf(limits),
      }),
    },
  };
}
