import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { GASKET_FAMILY_CODES, gasketFamily } from '../gaskets/families.ts';
import { refuse } from '../refusal.ts';
import { TIGHTENING_METHODS } from './methods.ts';
import type { GasketLimits, TargetRequest } from './request.ts';

function checkRotation({ flange }: TargetRequest): void {
  const { rotation, maximumBoltStress_MPa, strength } = flange;
  if (rotation === undefined) return;
  requireInRange([
    ['flange.rotation.gasketLimit_deg', rotation.gasketLimit_deg, { min: 0, max: 5, open: true }],
    ['flange.rotation.flangeAtMaximum_deg', rotation.flangeAtMaximum_deg, { min: 0, max: 5, open: true }],
  ]);
  if (rotation.source.trim() === '') {
    refuse('flange.rotation.source', 'source-missing', 'No rotation limit is published: name the source of this one.');
  }
  if (rotation.flangeAtMaximum_deg !== undefined && maximumBoltStress_MPa === undefined) {
    refuse(
      'flange.maximumBoltStress_MPa',
      'rotation-needs-flange',
      'The rotation of the flange was given, but not the bolt stress at which it has it. Give maximumBoltStress_MPa with its source.',
    );
  }
  if (rotation.flangeAtMaximum_deg === undefined && strength === undefined) {
    refuse(
      'flange.rotation.flangeAtMaximum_deg',
      'rotation-needs-flange',
      'The gasket’s rotation limit alone says nothing about this flange. Give the flange’s rotation at its maximumBoltStress_MPa, or its strength, from which the rotation is computed.',
    );
  }
}

/**
 * Refuses impossible numbers and unknown words of a request, all numbers at once.
 * @throws CalcRefusal `out-of-range`, `gasket-impossible`, `unknown-method`, `unknown-gasket-family`,
 *   `rotation-needs-flange`, `source-missing`
 */
export function checkRequest(input: TargetRequest): void {
  const { gasket, service, policy, lubricant, bolting } = input;
  requireInRange([
    ['gasket.contactOutside_mm', gasket.contactOutside_mm, POSITIVE],
    ['gasket.contactInside_mm', gasket.contactInside_mm, POSITIVE],
    ['gasket.count', gasket.count, { min: 1, max: 4 }],
    ['gasket.ribArea_mm2', gasket.ribArea_mm2, NOT_NEGATIVE],
    ['service.pressure_MPa', service.pressure_MPa, NOT_NEGATIVE],
    ['service.temperature_C', service.temperature_C, { min: -273, max: 900 }],
    ['service.testPressure_MPa', service.testPressure_MPa, NOT_NEGATIVE],
    ['service.axialForce_N', service.axialForce_N, NOT_NEGATIVE],
    ['service.moment_Nm', service.moment_Nm, NOT_NEGATIVE],
    ['policy.minimumBoltUtilisation', policy.minimumBoltUtilisation, { min: 0, max: 1 }],
    ['policy.maximumBoltUtilisation', policy.maximumBoltUtilisation, { min: 0, max: 1, open: true }],
    ['policy.scatter_percent', policy.scatter_percent, { min: 0, max: 60 }],
    ['policy.remainingShare', policy.remainingShare, { min: 0.1, max: 1 }],
    ['target.boltStress_MPa', input.target?.boltStress_MPa, POSITIVE],
    ['flange.maximumBoltStress_MPa', input.flange.maximumBoltStress_MPa, POSITIVE],
    ['bolting.yield_MPa', bolting.yield_MPa, POSITIVE],
    ...('nutFactor' in lubricant
      ? ([['lubricant.nutFactor', lubricant.nutFactor, { min: 0.01, max: 1 }]] as const)
      : ([
          ['lubricant.threadFriction', lubricant.threadFriction, { min: 0, max: 1 }],
          ['lubricant.bearingFriction', lubricant.bearingFriction, { min: 0, max: 1 }],
        ] as const)),
  ]);
  if (gasket.contactOutside_mm <= gasket.contactInside_mm) {
    refuse(
      'gasket.contactOutside_mm',
      'gasket-impossible',
      `The gasket contact has outside ${gasket.contactOutside_mm} mm and inside ${gasket.contactInside_mm} mm. The outside must be larger.`,
      gasket.contactInside_mm,
    );
  }
  if (!TIGHTENING_METHODS.includes(input.method)) {
    refuse('method', 'unknown-method', `Method "${input.method}" is unknown. Use ${TIGHTENING_METHODS.join(', ')}.`);
  }
  if (gasketFamily(gasket.family) === undefined) {
    refuse(
      'gasket.family',
      'unknown-gasket-family',
      `Gasket family "${gasket.family}" is unknown. Use one of ${GASKET_FAMILY_CODES.join(', ')}.`,
    );
  }
  checkRotation(input);
}

/**
 * Limits of the gasket; without them there is no target.
 * @throws CalcRefusal `gasket-data-missing`, `gasket-limits-cross`, `out-of-range`
 */
export function limitsOf(input: TargetRequest): GasketLimits {
  const { limits, family } = input.gasket;
  if (limits === undefined) {
    refuse(
      'gasket.limits',
      'gasket-data-missing',
      `The seating, operating, target and maximum stress of this ${family} gasket are not known. Enter the maker’s or the site’s tested data with its source.`,
    );
  }
  requireInRange([
    ['gasket.limits.seating_MPa', limits.seating_MPa, NOT_NEGATIVE],
    ['gasket.limits.operating_MPa', limits.operating_MPa, NOT_NEGATIVE],
    ['gasket.limits.target_MPa', limits.target_MPa, POSITIVE],
    ['gasket.limits.maximum_MPa', limits.maximum_MPa, POSITIVE],
  ]);
  if (limits.maximum_MPa < Math.max(limits.seating_MPa, limits.target_MPa)) {
    refuse(
      'gasket.limits.maximum_MPa',
      'gasket-limits-cross',
      `The maximum ${limits.maximum_MPa} MPa lies below seating ${limits.seating_MPa} or target ${limits.target_MPa} MPa. Check the gasket’s data.`,
      Math.max(limits.seating_MPa, limits.target_MPa),
    );
  }
  return limits;
}
