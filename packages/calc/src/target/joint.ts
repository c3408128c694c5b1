import { boltingGrade } from '../bolting/bolting-grade.ts';
import { findNut } from '../bolting/nuts.ts';
import { type Washer, washerOf } from '../bolting/washers.ts';
import { POSITIVE, requireInRange } from '../checks.ts';
import { type Flange, findFlange } from '../flanges/find-flange.ts';
import { refuse } from '../refusal.ts';
import { areasOf } from '../threads/geometry.ts';
import { type NutSeat, threadFrictionOf } from '../torque/friction.ts';
import type { Warning } from '../working.ts';
import { boltingWarnings } from './bolting-checks.ts';
import { checkRequest, limitsOf } from './check-request.ts';
import { METHOD_SCATTER } from './methods.ts';
import type { GasketLimits, TargetRequest } from './request.ts';

/** The request with everything looked up that its limits need. */
export interface Joint {
  readonly rated: boolean;
  /** As its standard lists it; undefined for a custom flange. */
  readonly flange: Flange | undefined;
  readonly thread: string;
  readonly count: number;
  /** What the turning nut bears on. */
  readonly seat: NutSeat;
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
  /** Between the nuts, washers included; unknown without clamped parts. */
  readonly grip_mm: number | undefined;
  /** Mid-nut to mid-nut. */
  readonly effectiveLength_mm: number | undefined;
  readonly warnings: Warning[];
}

/** Share of the gasket load that is left after relaxation, g of the joint component method (PCC-1, from memory). */
const REMAINING_SHARE = 0.7;

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

/** Between the nuts and mid-nut to mid-nut: the clamped parts, the washers, and one nut height. */
function lengthsOf(input: TargetRequest, thread: string, washer: Washer | undefined) {
  const parts = input.clampedParts;
  if (parts === undefined || parts.length === 0) return { grip_mm: undefined, effectiveLength_mm: undefined };
  requireInRange(parts.map((part, i) => [`clampedParts.${i}.thickness_mm`, part.thickness_mm, POSITIVE] as const));
  const nut_mm = findNut({ thread })?.height_mm ?? areasOf(thread).nominalDiameter_mm;
  const washers_mm = (input.bolting.washers?.perBolt ?? 0) * (washer?.thickness_mm ?? 0);
  const grip_mm = parts.reduce((sum, part) => sum + part.thickness_mm, washers_mm);
  return { grip_mm, effectiveLength_mm: grip_mm + nut_mm };
}

function washersOf({ bolting }: TargetRequest, thread: string) {
  if (bolting.washers === undefined) return undefined;
  const { perBolt, ...dimensions } = bolting.washers;
  requireInRange([['bolting.washers.perBolt', perBolt, { min: 1, max: 2 }]]);
  return washerOf({ thread, ...dimensions }, 'bolting.washers');
}

/** What was assumed, and what nobody has checked. */
function notChecked(input: TargetRequest, rated: boolean): Warning[] {
  const warnings: Warning[] = [];
  const { flange, policy, service } = input;
  if (service.temperature_C > 200) {
    warnings.push({
      code: 'no-yield-at-temperature',
      message: `Assembly limits stand on ambient yield; at ${service.temperature_C} °C bolts and gasket relax. No strength at temperature is held here.`,
    });
  }
  if (!rated && flange.maximumBoltStress_MPa === undefined && flange.strength === undefined) {
    warnings.push({
      code: 'flange-strength-not-checked',
      message:
        'The stresses of a custom flange are not in this window: give its dimensions and allowables (flange.strength), or its highest bolt stress.',
    });
  }
  if (flange.rotation === undefined) {
    warnings.push({
      code: 'rotation-not-checked',
      message:
        'The rotation of the flange is not checked: no limit is published. Give the gasket’s limit with its source.',
    });
  }
  const method = METHOD_SCATTER[input.method];
  if (policy.scatter_percent === undefined) {
    warnings.push({
      code: 'scatter-from-table',
      message: `The tool scatter ±${method.scatter_percent} % is from a table (${method.source}). Enter the site’s own if it is known.`,
    });
  }
  if (policy.remainingShare === undefined) {
    warnings.push({
      code: 'relaxation-from-memory',
      message: `The share of load left after relaxation was taken as ${REMAINING_SHARE} (ASME PCC-1, from memory).`,
    });
  }
  return warnings;
}

/**
 * Looks up and checks everything that the target needs.
 * @throws CalcRefusal of the look-ups, of checkRequest, limitsOf, boltingWarnings and washerOf
 */
export function resolveJoint(input: TargetRequest): Joint {
  checkRequest(input);
  const { thread, count, hole_mm, found, warnings } = boltsOf(input);
  const areas = areasOf(thread);
  const given_MPa = input.bolting.yield_MPa;
  const grade = given_MPa === undefined ? boltingGrade({ grade: input.bolting.grade, thread }) : undefined;
  const washers = washersOf(input, thread);
  const limits = limitsOf(input);
  const method = METHOD_SCATTER[input.method];
  const seat = { hole_mm, washer: washers?.washer };
  warnings.push(
    ...boltingWarnings(input, grade, found),
    ...(washers?.warnings ?? []),
    ...notChecked(input, found !== undefined),
  );
  const { contactOutside_mm, contactInside_mm, ribArea_mm2 = 0 } = input.gasket;
  return {
    rated: found !== undefined,
    flange: found,
    thread: areas.thread,
    count,
    seat,
    area_mm2: input.area === 'root' ? areas.rootArea_mm2 : areas.tensileStressArea_mm2,
    tensileArea_mm2: areas.tensileStressArea_mm2,
    yield_MPa: given_MPa ?? grade?.yield_MPa ?? Number.NaN,
    yieldSource: given_MPa === undefined ? (grade?.source ?? '') : (input.bolting.yieldSource ?? 'entered'),
    gasketArea_mm2: (Math.PI / 4) * (contactOutside_mm ** 2 - contactInside_mm ** 2) + ribArea_mm2,
    limits,
    scatter: (input.policy.scatter_percent ?? method.scatter_percent) / 100,
    scatterSource: input.policy.scatter_percent === undefined ? method.source : 'site policy',
    remainingShare: input.policy.remainingShare ?? REMAINING_SHARE,
    threadFriction: threadFrictionOf(input.lubricant, thread, seat),
    torsion: method.torsion,
    ...lengthsOf(input, thread, washers?.washer),
    warnings,
  };
}
