import type { TargetRequest } from '@seatwell/calc';
import type { JointSpecification } from '@seatwell/contract';
import { given, type JointState, type MakeState } from '@seatwell/workflow';
import type { GasketData } from './target-request.ts';

/** Strength, highest bolt stress and rotation of the flange, as far as register and gasket data say them. */
export function flangeLimits(
  { strength, maximum }: JointSpecification['flange'],
  { rotationLimit_deg, source }: GasketData,
): Pick<TargetRequest['flange'], 'strength' | 'maximumBoltStress_MPa' | 'maximumBoltStressSource' | 'rotation'> {
  const turned_deg = maximum?.rotation_deg;
  const rotation =
    rotationLimit_deg && (turned_deg || strength)
      ? { gasketLimit_deg: rotationLimit_deg, ...given('flangeAtMaximum_deg', turned_deg), source }
      : undefined;
  return {
    ...given('maximumBoltStress_MPa', maximum?.boltStress_MPa),
    ...given('maximumBoltStressSource', maximum?.source),
    ...given('rotation', rotation),
    ...(strength
      ? {
          strength: {
            kind: strength.kind,
            ...given('outsideDiameter_mm', strength.outsideDiameter_mm),
            ...given('insideDiameter_mm', strength.insideDiameter_mm),
            ...given('boltCircle_mm', strength.boltCircle_mm),
            ...given('thickness_mm', strength.thickness_mm),
            ...given('hub', strength.hub),
            allowableAmbient_MPa: strength.allowableAmbient_MPa,
            allowableOperating_MPa: strength.allowableOperating_MPa,
            elasticModulusAmbient_MPa: strength.elasticModulusAmbient_MPa,
            elasticModulusOperating_MPa: strength.elasticModulusOperating_MPa,
            source: strength.source,
          },
        }
      : {}),
  };
}

/** What the bolts clamp on this make, with every thickness; null where one is not known. */
export function knownThicknesses(
  joint: JointState,
  make: MakeState,
): readonly { readonly kind: string; readonly thickness_mm: number }[] | null {
  const parts = make.clampedParts ?? joint.specification.clampedParts;
  const known = parts.flatMap(({ kind, thickness_mm }) => (thickness_mm === null ? [] : [{ kind, thickness_mm }]));
  return known.length === 0 || known.length < parts.length ? null : known;
}

/**
 * Pull, moment and test pressure, and the temperatures where the bolts' expansion is known.
 * @param boltExpansion_perK of the procedure; null = nobody has said, and the temperatures are left out
 */
export function serviceLoads(
  { external, temperatures, testPressure_MPa }: JointSpecification['service'],
  boltExpansion_perK: number | null,
): Pick<TargetRequest['service'], 'axialForce_N' | 'moment_Nm' | 'testPressure_MPa' | 'thermal'> {
  const loads = {
    ...given('axialForce_N', external?.axialForce_N),
    ...given('moment_Nm', external?.moment_Nm),
    ...given('testPressure_MPa', testPressure_MPa),
  };
  if (!temperatures || boltExpansion_perK === null) return loads;
  const { assembly_C, goingUp, comingDown, flangeExpansion_perK, source, stiffness } = temperatures;
  const states = [
    { name: 'going up', pair: goingUp },
    { name: 'coming down', pair: comingDown },
  ].flatMap(({ name, pair }) =>
    pair ? [{ name, boltTemperature_C: pair.bolt_C, flangeTemperature_C: pair.flange_C }] : [],
  );
  return {
    ...loads,
    thermal: {
      assemblyTemperature_C: assembly_C,
      states,
      boltExpansion_perK,
      flangeExpansion_perK,
      source,
      ...given('stiffness', stiffness),
    },
  };
}

/** Where the register's data behind the limits are from. */
export const jointSources = ({ flange, service }: JointSpecification): readonly string[] =>
  [flange.strength, flange.maximum, service.external, service.temperatures, service.temperatures?.stiffness].flatMap(
    (each) => (each ? [each.source] : []),
  );
