import { POSITIVE, requireInRange } from '../checks.ts';
import { CalcRefusal, type RefusalItem, refuse } from '../refusal.ts';
import { show, type Warning, type WorkingStep } from '../working.ts';
import type { Joint } from './joint.ts';
import type { TargetRequest } from './request.ts';

/** What the worst states add to and take from the bolt stress, on the area of the request. */
export interface ThermalChange {
  readonly gain_MPa: number;
  /** As a positive number. */
  readonly loss_MPa: number;
  readonly source: string;
  readonly warnings: readonly Warning[];
}

/** Expansions of metals, 1/K: outside it a unit was mistaken. */
const EXPANSION = { min: 1e-6, max: 4e-5 };
const TEMPERATURE = { min: -273, max: 900 };

function check({ service: { thermal }, bolting, clampedParts }: TargetRequest): void {
  if (thermal === undefined) return;
  const { stiffness, states } = thermal;
  requireInRange([
    ['service.thermal.assemblyTemperature_C', thermal.assemblyTemperature_C, TEMPERATURE],
    ['service.thermal.boltExpansion_perK', thermal.boltExpansion_perK, EXPANSION],
    ['service.thermal.flangeExpansion_perK', thermal.flangeExpansion_perK, EXPANSION],
    ['service.thermal.states', states.length, { min: 1 }],
    ['service.thermal.stiffness.flanges_N_per_mm', stiffness?.flanges_N_per_mm, POSITIVE],
    ['service.thermal.stiffness.gaskets_N_per_mm', stiffness?.gaskets_N_per_mm, POSITIVE],
    ['bolting.elasticModulus_MPa', bolting.elasticModulus_MPa, POSITIVE],
    ...states.flatMap(
      (state, i) =>
        [
          [`service.thermal.states.${i}.boltTemperature_C`, state.boltTemperature_C, TEMPERATURE],
          [`service.thermal.states.${i}.flangeTemperature_C`, state.flangeTemperature_C, TEMPERATURE],
        ] as const,
    ),
  ]);
  const missing: RefusalItem[] = [];
  if (thermal.source.trim() === '') {
    missing.push({
      path: 'service.thermal.source',
      code: 'source-missing',
      message: 'The coefficients of expansion have no source. Name the document they are from.',
    });
  }
  if (clampedParts === undefined || clampedParts.length === 0) {
    missing.push({
      path: 'clampedParts',
      code: 'clamped-parts-missing',
      message: 'A temperature difference acts over the clamped length. Give clampedParts with their thickness_mm.',
    });
  }
  if (bolting.elasticModulus_MPa === undefined) {
    missing.push({
      path: 'bolting.elasticModulus_MPa',
      code: 'elastic-modulus-missing',
      message: 'A temperature difference stretches the bolts. Give bolting.elasticModulus_MPa.',
    });
  }
  if (missing.length > 0) throw new CalcRefusal(missing);
}

/**
 * Change of bolt stress by a temperature difference between bolts and flanges; undefined where none is given.
 *
 * Source: statics and Hooke's law; expansions as entered.
 * Formula: ΔS = E·(αf·ΔTf − αb·ΔTb)·(grip/Leff)·(At/Ab)/(1 + kb/kj), kb = nb·E·At/Leff, 1/kj = 1/kf + 1/kg.
 *   Hotter flanges stretch the bolts (gain), hotter bolts let go (loss). Without stiffnesses kj is infinite: the
 *   whole difference goes into the bolts, which overstates gain and loss.
 * @throws CalcRefusal `clamped-parts-missing`, `elastic-modulus-missing`, `source-missing`, `out-of-range`
 * Note: the gasket in the clamped length is taken to expand like the flanges; the modulus is the one given, cold.
 */
export function thermalChange(
  input: TargetRequest,
  joint: Joint,
  steps: WorkingStep[] | undefined,
): ThermalChange | undefined {
  const { thermal } = input.service;
  if (thermal === undefined) return undefined;
  check(input);
  const { elasticModulus_MPa: E = Number.NaN } = input.bolting;
  const { grip_mm = Number.NaN, effectiveLength_mm = Number.NaN, tensileArea_mm2, area_mm2, count } = joint;
  const boltStiffness = (count * E * tensileArea_mm2) / effectiveLength_mm;
  const { stiffness, assemblyTemperature_C } = thermal;
  const jointStiffness =
    stiffness === undefined ? undefined : 1 / (1 / stiffness.flanges_N_per_mm + 1 / stiffness.gaskets_N_per_mm);
  const share = jointStiffness === undefined ? 1 : 1 / (1 + boltStiffness / jointStiffness);
  if (stiffness !== undefined && stiffness.source.trim() === '') {
    refuse('service.thermal.stiffness.source', 'source-missing', 'The stiffnesses have no source. Name it.');
  }
  if (stiffness !== undefined && jointStiffness !== undefined) {
    steps?.push({
      symbol: 'ξ',
      meaning: 'share of a length difference that the bolts take',
      formula: '1/(1 + nb·E·At/Leff·(1/kf + 1/kg))',
      substituted: `1 / (1 + ${count} × ${show(E)} × ${show(tensileArea_mm2)} / ${show(effectiveLength_mm)} × (1 / ${show(stiffness.flanges_N_per_mm)} + 1 / ${show(stiffness.gaskets_N_per_mm)}))`,
      value: share,
      unit: '',
      source: `statics; stiffness: ${stiffness.source}`,
    });
  }
  let gain_MPa = 0;
  let loss_MPa = 0;
  for (const { name, boltTemperature_C, flangeTemperature_C } of thermal.states) {
    const flangeStrain = thermal.flangeExpansion_perK * (flangeTemperature_C - assemblyTemperature_C);
    const boltStrain = thermal.boltExpansion_perK * (boltTemperature_C - assemblyTemperature_C);
    const change_MPa =
      (((E * (flangeStrain - boltStrain) * grip_mm) / effectiveLength_mm) * tensileArea_mm2 * share) / area_mm2;
    gain_MPa = Math.max(gain_MPa, change_MPa);
    loss_MPa = Math.max(loss_MPa, -change_MPa);
    steps?.push({
      symbol: 'ΔSb',
      meaning: `change of bolt stress by temperature: ${name}`,
      formula: 'ξ·E·(αf·ΔTf − αb·ΔTb)·(grip/Leff)·(At/Ab)',
      substituted: `${show(share)} × ${show(E)} × (${show(thermal.flangeExpansion_perK)} × ${show(flangeTemperature_C - assemblyTemperature_C)} − ${show(thermal.boltExpansion_perK)} × ${show(boltTemperature_C - assemblyTemperature_C)}) × ${show(grip_mm)} / ${show(effectiveLength_mm)} × ${show(tensileArea_mm2)} / ${show(area_mm2)}`,
      value: change_MPa,
      unit: 'MPa',
      source: `Hooke’s law; ${thermal.source}`,
    });
  }
  return {
    gain_MPa,
    loss_MPa,
    source: `temperature difference; ${thermal.source}`,
    warnings:
      stiffness === undefined
        ? [
            {
              code: 'thermal-conservative',
              message: `The clamped parts were taken as rigid: temperature adds up to ${gain_MPa.toFixed(0)} and takes up to ${loss_MPa.toFixed(0)} MPa of bolt stress. Stiffnesses of flanges and gaskets would lower both.`,
            },
          ]
        : [],
  };
}
