import { boltingGrade } from '../bolting/bolting-grade.ts';
import { findNut } from '../bolting/nuts.ts';
import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { findFlange } from '../flanges/find-flange.ts';
import { GASKET_FAMILY_CODES, gasketFamily } from '../gaskets/families.ts';
import { refuse } from '../refusal.ts';
import { areasOf } from '../threads/geometry.ts';
import { threadFrictionOf } from '../torque/friction.ts';
import type { Warning } from '../working.ts';
import { METHOD_SCATTER, TIGHTENING_METHODS } from './methods.ts';
import type { GasketLimits, TargetRequest } from './request.ts';

/** The request with everything looked up that its limits need. */
export interface Joint {
  readonly rated: boolean;
  readonly thread: string;
  readonly count: number;
  readonly hole_mm: number | undefined;
  /** On the area of the request, one bolt. */
  readonly area_mm2: number;
  readonly tensileArea_mm2: number;
  readonly yield_MPa: number;
  readonly yieldSource: string;
  readonly gasketArea_mm2: number;
  readonly limits: GasketLimits;
  readonly scatter: number;
  readonly scatterSource: string;
  readonly remainingShare: number;
  readonly threadFriction: number;
  readonly torsion: boolean;
  readonly effectiveLength_mm: number | undefined;
  readonly warnings: Warning[];
}

/** Share of the gasket load that is left after relaxation, g of the joint component method (PCC-1, from memory). */
const REMAINING_SHARE = 0.7;

function checkRequest(input: TargetRequest): void {
  const { gasket, service, policy, lubricant } = input;
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
}

/** Limits of the gasket; without them there is no target. */
function limitsOf(input: TargetRequest): GasketLimits {
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

function boltsOf(input: TargetRequest) {
  const { flange, bolting } = input;
  // The count of the bolting answers where the standard leaves it open (EN 1092-1 DN 65).
  const boltCount = 'custom' in flange ? undefined : (flange.boltCount ?? bolting.count);
  const found =
    'custom' in flange ? undefined : findFlange(boltCount === undefined ? flange : { ...flange, boltCount });
  const listed =
    'custom' in flange
      ? { thread: flange.custom.boltThread, count: flange.custom.boltCount, hole_mm: flange.custom.boltHole_mm }
      : { thread: found?.boltThread ?? '', count: found?.boltCount ?? 0, hole_mm: found?.boltHole_mm };
  const warnings: Warning[] = [...(found?.warnings ?? [])];
  const thread = bolting.thread ?? listed.thread;
  const count = bolting.count ?? listed.count;
  requireInRange([['bolting.count', count, { min: 4, max: 200 }]]);
  if (!Number.isInteger(count)) refuse('bolting.count', 'not-a-whole-number', `Bolt count is ${count}.`);
  if (found !== undefined && count !== found.boltCount) {
    refuse(
      'bolting.count',
      'bolt-count-not-of-this-flange',
      `${count} bolts were given; ${found.standard} ${found.size} ${found.rating} has ${found.boltCount}. Correct the count or describe a custom flange.`,
      found.boltCount,
    );
  }
  if (found !== undefined && areasOf(thread).thread !== areasOf(found.boltThread).thread) {
    warnings.push({
      code: 'thread-not-of-this-flange',
      message: `Bolting ${thread} is not the ${found.boltThread} of the flange’s standard.`,
    });
  }
  return { thread, count, hole_mm: listed.hole_mm, found, warnings };
}

/** Mid-nut to mid-nut: the clamped parts and one nut height. */
function effectiveLengthOf(input: TargetRequest, thread: string): number | undefined {
  const parts = input.clampedParts;
  if (parts === undefined || parts.length === 0) return undefined;
  parts.forEach((part, i) => {
    requireInRange([[`clampedParts.${i}.thickness_mm`, part.thickness_mm, POSITIVE]]);
  });
  const nut_mm = findNut({ thread })?.height_mm ?? areasOf(thread).nominalDiameter_mm;
  return parts.reduce((sum, part) => sum + part.thickness_mm, nut_mm);
}

/**
 * Looks up and checks everything that the target needs.
 * @throws CalcRefusal of the look-ups, `gasket-data-missing`, `gasket-impossible`, `gasket-limits-cross`,
 *   `unknown-gasket-family`, `unknown-method`
 */
export function resolveJoint(input: TargetRequest): Joint {
  checkRequest(input);
  const { thread, count, hole_mm, found, warnings } = boltsOf(input);
  const areas = areasOf(thread);
  const given_MPa = input.bolting.yield_MPa;
  requireInRange([['bolting.yield_MPa', given_MPa, POSITIVE]]);
  const grade = given_MPa === undefined ? boltingGrade({ grade: input.bolting.grade, thread }) : undefined;
  warnings.push(...(grade?.warnings ?? []));
  const family = gasketFamily(input.gasket.family);
  if (grade?.lowStrength === true && family?.soft === false) {
    warnings.push({
      code: 'low-strength-with-hard-gasket',
      message: `${grade.grade} yields at ${grade.yield_MPa} MPa: too weak to seat a ${input.gasket.family} gasket in most joints (ASME B31.3 309).`,
    });
  }
  if (input.bolting.condition === 'reused') {
    warnings.push({
      code: 'reused-bolting',
      message: 'Reused bolting does not share the friction of new bolting: clean, inspect, lubricate, or replace.',
    });
  }
  if (input.service.temperature_C > 200) {
    warnings.push({
      code: 'no-yield-at-temperature',
      message: `Assembly limits stand on ambient yield; at ${input.service.temperature_C} °C bolts and gasket relax. No strength at temperature is held here.`,
    });
  }
  if (found === undefined && input.flange.maximumBoltStress_MPa === undefined) {
    warnings.push({
      code: 'flange-strength-not-checked',
      message:
        'The stresses of a custom flange are not in this window: compute them (flange stress) and give its highest bolt stress.',
    });
  }
  const limits = limitsOf(input);
  const method = METHOD_SCATTER[input.method];
  if (input.policy.scatter_percent === undefined) {
    warnings.push({
      code: 'scatter-from-table',
      message: `The tool scatter ±${method.scatter_percent} % is from a table (${method.source}). Enter the site’s own if it is known.`,
    });
  }
  if (input.policy.remainingShare === undefined) {
    warnings.push({
      code: 'relaxation-from-memory',
      message: `The share of load left after relaxation was taken as ${REMAINING_SHARE} (ASME PCC-1, from memory).`,
    });
  }
  const { contactOutside_mm, contactInside_mm, ribArea_mm2 = 0 } = input.gasket;
  return {
    rated: found !== undefined,
    thread: areas.thread,
    count,
    hole_mm,
    area_mm2: input.area === 'root' ? areas.rootArea_mm2 : areas.tensileStressArea_mm2,
    tensileArea_mm2: areas.tensileStressArea_mm2,
    yield_MPa: given_MPa ?? grade?.yield_MPa ?? Number.NaN,
    yieldSource: given_MPa === undefined ? (grade?.source ?? '') : (input.bolting.yieldSource ?? 'entered'),
    gasketArea_mm2: (Math.PI / 4) * (contactOutside_mm ** 2 - contactInside_mm ** 2) + ribArea_mm2,
    limits,
    scatter: (input.policy.scatter_percent ?? method.scatter_percent) / 100,
    scatterSource: input.policy.scatter_percent === undefined ? method.source : 'site policy',
    remainingShare: input.policy.remainingShare ?? REMAINING_SHARE,
    threadFriction: threadFrictionOf(input.lubricant, thread, hole_mm),
    torsion: method.torsion,
    effectiveLength_mm: effectiveLengthOf(input, thread),
    warnings,
  };
}
