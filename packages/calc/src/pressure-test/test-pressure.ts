import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import type { Warning } from '../working.ts';

const STRESS_RATIO_LIMIT = 6.5;
const KELVIN = 273.15;

/**
 * Strength-test pressure of piping.
 *
 * Source: ASME B31.3 345.4.2 (hydrostatic 1.5·P·ST/S, ST/S at most 6.5), 345.5.4 (pneumatic 1.1·P); from memory.
 * @param input.stressAtTest_MPa ST, @param input.stressAtDesign_MPa S; without them their ratio is 1 and warned
 * @throws CalcRefusal `out-of-range`
 */
export function strengthTestPressure(input: {
  readonly designPressure_MPa: number;
  readonly medium: 'liquid' | 'gas';
  readonly stressAtTest_MPa?: number;
  readonly stressAtDesign_MPa?: number;
}): { readonly pressure_MPa: number; readonly warnings: readonly Warning[] } {
  requireInRange([
    ['designPressure_MPa', input.designPressure_MPa, POSITIVE],
    ['stressAtTest_MPa', input.stressAtTest_MPa, POSITIVE],
    ['stressAtDesign_MPa', input.stressAtDesign_MPa, POSITIVE],
  ]);
  if (input.medium === 'gas') return { pressure_MPa: 1.1 * input.designPressure_MPa, warnings: [] };
  const { stressAtTest_MPa, stressAtDesign_MPa } = input;
  if (stressAtTest_MPa === undefined || stressAtDesign_MPa === undefined) {
    return {
      pressure_MPa: 1.5 * input.designPressure_MPa,
      warnings: [
        {
          code: 'stress-ratio-taken-as-one',
          message: 'Allowable stresses at test and design temperature were not given; their ratio was taken as 1.',
        },
      ],
    };
  }
  const ratio = stressAtTest_MPa / stressAtDesign_MPa;
  const capped = Math.min(ratio, STRESS_RATIO_LIMIT);
  return {
    pressure_MPa: 1.5 * input.designPressure_MPa * capped,
    warnings:
      ratio > STRESS_RATIO_LIMIT
        ? [{ code: 'stress-ratio-limited', message: `The ratio ${ratio.toFixed(2)} was limited to 6.5 by the code.` }]
        : [],
  };
}

/**
 * Pressure of a sensitive leak test: at least the lesser of 105 kPa and 25 % of design pressure.
 *
 * Source: ASME B31.3 345.8 (from memory).
 */
export function sensitiveLeakTestPressure(input: { readonly designPressure_MPa: number }): {
  readonly pressure_MPa: number;
} {
  requireInRange([['designPressure_MPa', input.designPressure_MPa, POSITIVE]]);
  return { pressure_MPa: Math.min(0.105, 0.25 * input.designPressure_MPa) };
}

/**
 * Upper limit of a pneumatic test of a vessel or pipe: the lesser of 1.33·P and the pressure at 90 % of yield.
 *
 * Source: ASME B31.3 345.5.4 (from memory).
 */
export function pneumaticUpperLimit(input: {
  readonly designPressure_MPa: number;
  readonly pressureAtYield_MPa: number;
}): { readonly pressure_MPa: number } {
  requireInRange([
    ['designPressure_MPa', input.designPressure_MPa, POSITIVE],
    ['pressureAtYield_MPa', input.pressureAtYield_MPa, POSITIVE],
  ]);
  return { pressure_MPa: Math.min(1.33 * input.designPressure_MPa, 0.9 * input.pressureAtYield_MPa) };
}

/**
 * Pressure of a closed gas volume after a change of temperature.
 *
 * Source: ideal gas at constant volume, P2/P1 = T2/T1, absolute.
 * @param input.pressure_MPa gauge; atmosphere 0.101325 MPa
 */
export function gasPressureAtTemperature(input: {
  readonly pressure_MPa: number;
  readonly from_C: number;
  readonly to_C: number;
}): { readonly pressure_MPa: number } {
  requireInRange([
    ['pressure_MPa', input.pressure_MPa, NOT_NEGATIVE],
    ['from_C', input.from_C, { min: -200, max: 1000 }],
    ['to_C', input.to_C, { min: -200, max: 1000 }],
  ]);
  const atmosphere_MPa = 0.101325;
  const absolute_MPa = (input.pressure_MPa + atmosphere_MPa) * ((input.to_C + KELVIN) / (input.from_C + KELVIN));
  return { pressure_MPa: absolute_MPa - atmosphere_MPa };
}

/**
 * Pressure rise of a pipe packed with water that warms: why a liquid-full test is vented before the sun comes.
 *
 * Source: thin pipe held at its ends free, Δp = (β − 3α)·ΔT/(1/Kw + D/(E·t)·(1.25 − ν)); common practice.
 * @param input.expansion_perK volume expansion of the liquid at its temperature; water 2.1e-4 at 20 °C
 */
export function liquidPressureRise(input: {
  readonly temperatureRise_K: number;
  readonly outsideDiameter_mm: number;
  readonly wall_mm: number;
  readonly expansion_perK: number;
  readonly bulkModulus_MPa: number;
  readonly elasticModulus_MPa: number;
  readonly pipeExpansion_perK: number;
}): { readonly rise_MPa: number } {
  requireInRange([
    ['temperatureRise_K', input.temperatureRise_K, { min: -100, max: 100 }],
    ['outsideDiameter_mm', input.outsideDiameter_mm, POSITIVE],
    ['wall_mm', input.wall_mm, POSITIVE],
    ['expansion_perK', input.expansion_perK, { min: -1e-3, max: 5e-3 }],
    ['bulkModulus_MPa', input.bulkModulus_MPa, POSITIVE],
    ['elasticModulus_MPa', input.elasticModulus_MPa, POSITIVE],
    ['pipeExpansion_perK', input.pipeExpansion_perK, NOT_NEGATIVE],
  ]);
  const poisson = 0.3;
  const give =
    1 / input.bulkModulus_MPa +
    (input.outsideDiameter_mm / (input.elasticModulus_MPa * input.wall_mm)) * (1.25 - poisson);
  return { rise_MPa: ((input.expansion_perK - 3 * input.pipeExpansion_perK) * input.temperatureRise_K) / give };
}

/**
 * Whether a gauge suits a test pressure: its range between 1.5 and 4 times the pressure, about double preferred.
 *
 * Source: ASME VIII-1 UG-102 (from memory).
 */
export function gaugeRange(input: { readonly testPressure_MPa: number; readonly gaugeFullScale_MPa: number }): {
  readonly accepted: boolean;
  readonly minimum_MPa: number;
  readonly maximum_MPa: number;
  readonly source: string;
} {
  requireInRange([
    ['testPressure_MPa', input.testPressure_MPa, POSITIVE],
    ['gaugeFullScale_MPa', input.gaugeFullScale_MPa, POSITIVE],
  ]);
  const minimum_MPa = 1.5 * input.testPressure_MPa;
  const maximum_MPa = 4 * input.testPressure_MPa;
  return {
    accepted: input.gaugeFullScale_MPa >= minimum_MPa && input.gaugeFullScale_MPa <= maximum_MPa,
    minimum_MPa,
    maximum_MPa,
    source: 'ASME VIII-1 UG-102 (from memory)',
  };
}

/**
 * Whether the metal is warm enough for a test: at least 17 °C above its minimum design metal temperature.
 *
 * Source: ASME VIII-1 UG-99(h), recommendation (from memory).
 */
export function metalTemperatureMargin(input: { readonly metal_C: number; readonly minimumDesign_C: number }): {
  readonly accepted: boolean;
  readonly margin_K: number;
  readonly limit_K: number;
  readonly source: string;
} {
  requireInRange([
    ['metal_C', input.metal_C, { min: -200, max: 800 }],
    ['minimumDesign_C', input.minimumDesign_C, { min: -273, max: 200 }],
  ]);
  const margin_K = input.metal_C - input.minimumDesign_C;
  return { accepted: margin_K >= 17, margin_K, limit_K: 17, source: 'ASME VIII-1 UG-99(h) (from memory)' };
}

/**
 * Tightness-test pressure of a remade joint near operating pressure.
 *
 * Source: common practice: operating pressure to 1.1 times it, never above the strength-test pressure.
 * @throws CalcRefusal `tightness-above-strength-test`
 */
export function tightnessTestPressure(input: {
  readonly operatingPressure_MPa: number;
  readonly factor: number;
  readonly strengthTestPressure_MPa?: number;
}): { readonly pressure_MPa: number } {
  requireInRange([
    ['operatingPressure_MPa', input.operatingPressure_MPa, POSITIVE],
    ['factor', input.factor, { min: 0.1, max: 1.5 }],
    ['strengthTestPressure_MPa', input.strengthTestPressure_MPa, POSITIVE],
  ]);
  const pressure_MPa = input.operatingPressure_MPa * input.factor;
  if (input.strengthTestPressure_MPa !== undefined && pressure_MPa > input.strengthTestPressure_MPa) {
    refuse(
      'factor',
      'tightness-above-strength-test',
      `The tightness test at ${pressure_MPa.toFixed(2)} MPa would exceed the strength test at ${input.strengthTestPressure_MPa} MPa. Lower the factor.`,
      input.strengthTestPressure_MPa,
    );
  }
  return { pressure_MPa };
}
