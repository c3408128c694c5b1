import { type BoltingGrade, nutPairing } from '../bolting/bolting-grade.ts';
import { COATING_LIMITS } from '../bolting/pairing.ts';
import { requireInRange } from '../checks.ts';
import type { Flange } from '../flanges/find-flange.ts';
import { gasketFamily } from '../gaskets/families.ts';
import { refuse } from '../refusal.ts';
import type { Warning } from '../working.ts';
import type { TargetRequest } from './request.ts';

/** Class from which low-strength bolting needs a calculation (ASME B31.3 309.2.1, from memory). */
const LOW_STRENGTH_CLASS = 400;

function lowStrength(grade: BoltingGrade, family: string, flange: Flange | undefined): Warning[] {
  if (!grade.lowStrength) return [];
  const warnings: Warning[] = [];
  if (gasketFamily(family)?.soft === false) {
    warnings.push({
      code: 'low-strength-with-hard-gasket',
      message: `${grade.grade} yields at ${grade.yield_MPa} MPa: too weak to seat a ${family} gasket in most joints (ASME B31.3 309).`,
    });
  }
  const asmeClass = Number(flange?.rating);
  if (asmeClass >= LOW_STRENGTH_CLASS) {
    warnings.push({
      code: 'low-strength-in-high-class',
      message: `${grade.grade} is low-strength bolting: in class ${asmeClass} it needs a calculation of its own (ASME B31.3 309, from memory: not for class 400 and above).`,
    });
  }
  return warnings;
}

function checkNut({ bolting }: TargetRequest, grade: BoltingGrade | undefined): Warning[] {
  if (bolting.nut === undefined) return [];
  if (grade === undefined) {
    return [
      {
        code: 'nut-not-checked',
        message: `No table pairs nuts with ${bolting.grade}: check that ${bolting.nut} carries the proof load of the bolt.`,
      },
    ];
  }
  const { accepted, nuts, source } = nutPairing({ grade: bolting.grade, nut: bolting.nut });
  if (!accepted) {
    refuse(
      'bolting.nut',
      'nut-not-for-grade',
      `Nut ${bolting.nut} does not go on ${grade.grade}; ${nuts.join(', ')} do (${source}). Change the nut or the grade.`,
      nuts.join(', '),
    );
  }
  return [];
}

function checkCoating({ bolting, service }: TargetRequest): Warning[] {
  const { coating, coatingMaximum_C, condition } = bolting;
  requireInRange([['bolting.coatingMaximum_C', coatingMaximum_C, { min: -273, max: 900 }]]);
  if (coating === undefined) {
    return condition === 'coated'
      ? [
          {
            code: 'coating-not-named',
            message:
              'The bolting is coated, but not with what: its temperature limit and its friction are not checked.',
          },
        ]
      : [];
  }
  const common = COATING_LIMITS.find((row) => row.coating === coating);
  if (coatingMaximum_C !== undefined && (bolting.coatingSource ?? '').trim() === '') {
    refuse('bolting.coatingSource', 'source-missing', `Name the source of the ${coatingMaximum_C} °C for ${coating}.`);
  }
  const maximum_C = coatingMaximum_C ?? common?.maximum_C;
  if (maximum_C === undefined) {
    refuse(
      'bolting.coating',
      'coating-limit-missing',
      `No temperature limit of a ${coating} coating is held (${COATING_LIMITS.map((row) => row.coating).join(', ')}). Give coatingMaximum_C with its source.`,
    );
  }
  if (service.temperature_C > maximum_C) {
    const why = coatingMaximum_C === undefined ? `${common?.why}; common practice` : bolting.coatingSource;
    refuse(
      'bolting.coating',
      'coating-too-hot',
      `A ${coating} coating is good to ${maximum_C} °C (${why}); the service has ${service.temperature_C} °C. Choose another coating or bare bolting, or give the maker’s coatingMaximum_C with its source.`,
      maximum_C,
    );
  }
  return [];
}

/**
 * Checks the bolting against its nut, coating, gasket and class.
 * @throws CalcRefusal `nut-not-for-grade`, `coating-too-hot`, `coating-limit-missing`, `source-missing`
 */
export function boltingWarnings(
  input: TargetRequest,
  grade: BoltingGrade | undefined,
  flange: Flange | undefined,
): readonly Warning[] {
  const warnings = [
    ...(grade?.warnings ?? []),
    ...(grade === undefined ? [] : lowStrength(grade, input.gasket.family, flange)),
    ...checkNut(input, grade),
    ...checkCoating(input),
  ];
  if (input.bolting.condition === 'reused') {
    warnings.push({
      code: 'reused-bolting',
      message: 'Reused bolting does not share the friction of new bolting: clean, inspect, lubricate, or replace.',
    });
  }
  return warnings;
}
