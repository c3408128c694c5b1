import { POSITIVE, requireInRange } from '../checks.ts';
import { type Explainable, type Explained, explained, show, stepsFor, type Warning } from '../working.ts';

export interface PneumaticTestRequest extends Explainable {
  /** Gauge. */
  readonly testPressure_MPa: number;
  readonly volume_m3: number;
  /** k = cp/cv; 1.4 for air and nitrogen. Without it the printed exponent 0.286 for air is used. */
  readonly gasRatio?: number;
  /** Edition of the distance formula; there is no default, the two differ by 26 %. */
  readonly method: 'PCC-2-2008' | 'PCC-2-2018';
}

export interface PneumaticTest extends Explained {
  readonly storedEnergy_J: number;
  readonly tntEquivalent_kg: number;
  readonly distance_m: number;
  readonly governedBy: 'scaled-distance' | 'floor';
  /** Distance of the formula before the floor. */
  readonly scaledDistance_m: number;
}

const ATMOSPHERE_PA = 101_000;
const PRINTED_EXPONENT = 0.286;
const PRINTED_FACTOR = 2.5;
const TNT_J_PER_KG = 4_266_920;
const SCALED_DISTANCE = 20;
/**
 * Least distance up to 135.5 MJ. The article's floor of 60 m above that never governs: there the formula gives 63 m
 * and more in either edition.
 */
const FLOOR_M = 30;
/** End of the range that the article gives a floor for. */
const LARGE_J = 271e6;
const PA_PER_MPA = 1e6;

/**
 * Stored energy of a pneumatic test and the distance to keep.
 *
 * Source: ASME PCC-2 article 501 (2008; 2018). The scaled distance is R = 20·TNT^⅓ in 2008 and 20·(2·TNT)^⅓ later.
 * Formula: E = 1/(k − 1)·Pat·V·[1 − (Pa/Pat)^((k − 1)/k)], absolute, Pa 101 000 Pa; for air as printed
 *   2.5·Pat·V·[1 − (Pa/Pat)^0.286]; TNT = E/4 266 920.
 * @param input.testPressure_MPa gauge, more than zero
 * @throws CalcRefusal `out-of-range`
 */
export function pneumaticTest(input: PneumaticTestRequest): PneumaticTest {
  requireInRange([
    ['testPressure_MPa', input.testPressure_MPa, POSITIVE],
    ['volume_m3', input.volume_m3, POSITIVE],
    ['gasRatio', input.gasRatio, { min: 1, max: 1.7, open: true }],
  ]);
  const absolute_Pa = input.testPressure_MPa * PA_PER_MPA + ATMOSPHERE_PA;
  const k = input.gasRatio;
  const factor = k === undefined ? PRINTED_FACTOR : 1 / (k - 1);
  const exponent = k === undefined ? PRINTED_EXPONENT : (k - 1) / k;
  const storedEnergy_J = factor * absolute_Pa * input.volume_m3 * (1 - (ATMOSPHERE_PA / absolute_Pa) ** exponent);
  const tntEquivalent_kg = storedEnergy_J / TNT_J_PER_KG;
  const doubled = input.method === 'PCC-2-2018' ? 2 : 1;
  const scaledDistance_m = SCALED_DISTANCE * Math.cbrt(doubled * tntEquivalent_kg);
  const large = storedEnergy_J > LARGE_J;
  const distance_m = Math.max(scaledDistance_m, FLOOR_M);
  const warnings: Warning[] = [
    {
      code: 'fragments-not-covered',
      message: 'The distance is for the blast wave; fragments may fly further.',
    },
  ];
  if (large) {
    warnings.push({
      code: 'energy-above-271-MJ',
      message: `The stored energy is ${(storedEnergy_J / 1e6).toFixed(0)} MJ: only the formula gives a distance above 271 MJ. Test with liquid, divide the system, or have a barrier designed.`,
    });
  }
  const source = `ASME ${input.method.slice(0, 5)} article 501, ${input.method.slice(6)} form`;
  const steps = stepsFor(input);
  steps?.push(
    {
      symbol: 'E',
      meaning: 'stored energy',
      formula: k === undefined ? '2.5·Pat·V·[1 − (Pa/Pat)^0.286]' : '1/(k − 1)·Pat·V·[1 − (Pa/Pat)^((k − 1)/k)]',
      substituted: `${show(factor)} × ${show(absolute_Pa)} × ${show(input.volume_m3)} × (1 − (${ATMOSPHERE_PA} / ${show(absolute_Pa)})^${show(exponent)})`,
      value: storedEnergy_J,
      unit: 'J',
      source,
    },
    {
      symbol: 'TNT',
      meaning: 'equivalent mass',
      formula: 'E/4 266 920',
      substituted: `${show(storedEnergy_J)} / ${TNT_J_PER_KG}`,
      value: tntEquivalent_kg,
      unit: 'kg',
      source,
    },
    {
      symbol: 'R',
      meaning: 'distance',
      formula: doubled === 1 ? 'max(20·TNT^⅓, floor)' : 'max(20·(2·TNT)^⅓, floor)',
      substituted: `max(${SCALED_DISTANCE} × (${doubled} × ${show(tntEquivalent_kg)})^(1 / 3), ${FLOOR_M})`,
      value: distance_m,
      unit: 'm',
      source,
    },
  );
  return explained(
    {
      storedEnergy_J,
      tntEquivalent_kg,
      distance_m,
      governedBy: scaledDistance_m >= FLOOR_M ? ('scaled-distance' as const) : ('floor' as const),
      scaledDistance_m,
    },
    warnings,
    steps,
  );
}
