import { finite } from '../checks.ts';
import { explained, type Warning } from '../working.ts';
import {
  checkFlangeStress,
  type FlangeStress,
  type FlangeStressRequest,
  type FlangeStressState,
} from './flange-stress-request.ts';
import { flangeStressSteps } from './flange-stress-working.ts';
import { integralHubFactors, looseHubFactors } from './hub-factors.ts';
import { shapeConstants } from './shape-constants.ts';

/** Rotations that the rigidity index stands on, degrees: KI 0.3 integral, KL 0.2 loose (2-14). */
export const RIGIDITY_ROTATION_DEG = { integral: 0.3, loose: 0.2 } as const;
const RIGIDITY_HUB = 52.14;
const RIGIDITY_PLATE = 109.4;
const NMM_PER_NM = 1000;

/** Lever arms of the three forces, ASME VIII-1 App. 2 Table 2-6. */
function leverArms(input: FlangeStressRequest) {
  const { insideDiameter_mm: B, boltCircle_mm: C, hub, loads } = input;
  const gasket_mm = (C - loads.reactionDiameter_mm) / 2;
  if (input.kind === 'integral' && hub !== undefined) {
    const R = (C - B) / 2 - hub.largeThickness_mm;
    return {
      hub_mm: R + hub.largeThickness_mm / 2,
      face_mm: (R + hub.largeThickness_mm + gasket_mm) / 2,
      gasket_mm,
    };
  }
  const hub_mm = (C - B) / 2;
  return { hub_mm, face_mm: (hub_mm + gasket_mm) / 2, gasket_mm };
}

/**
 * Stresses and rigidity of a flange under its bolts.
 *
 * Source: ASME BPVC VIII-1 Appendix 2 (2-6, 2-7, 2-8, 2-14). Governing for custom flanges, advisory for flanges
 *   rated by their standard.
 * Formula: M = HD·hD + HT·hT + HG·hG; SH = f·M/(L·g1²·B), SR = (1.33·t·e + 1)·M/(L·t²·B), ST = Y·M/(t²·B) − Z·SR;
 *   J = 52.14·V·M/(L·E·g0²·K·h0), plate 109.4·M/(E·t³·ln K·KL).
 * @param input.loads from gasketLoads and requiredBoltArea
 * @throws CalcRefusal `out-of-range`, `flange-impossible`, `gasket-impossible`, `hub-must-be-given`, `hub-impossible`
 * Note: the smaller-bore choice B1 for B < 20·g1 is not made; the code leaves it to the designer.
 */
export function flangeStress(input: FlangeStressRequest): FlangeStress {
  checkFlangeStress(input);
  const { outsideDiameter_mm: A, insideDiameter_mm: B, thickness_mm: t, hub, loads, allowables } = input;
  const K = A / B;
  const { T, U, Y, Z } = shapeConstants(K);
  const arms = leverArms(input);
  const H_N = (Math.PI / 4) * loads.reactionDiameter_mm ** 2 * loads.equivalentPressure_MPa;
  const HD_N = (Math.PI / 4) * B ** 2 * loads.equivalentPressure_MPa;
  const HG_N = loads.operatingBoltLoad_N - H_N;
  const warnings: Warning[] = [];
  if (HG_N < 0) {
    warnings.push({
      code: 'bolt-load-below-end-force',
      message: `The operating bolt load ${Math.round(loads.operatingBoltLoad_N)} N is below the end force ${Math.round(H_N)} N: no gasket load is left.`,
    });
  }
  const operating_Nmm = HD_N * arms.hub_mm + (H_N - HD_N) * arms.face_mm + HG_N * arms.gasket_mm;
  const seating_Nmm = loads.seatingDesignLoad_N * arms.gasket_mm;

  const hubbed =
    hub === undefined
      ? undefined
      : (() => {
          const g0 = hub.smallThickness_mm;
          const h0 = Math.sqrt(B * g0);
          const factorsOf = input.kind === 'integral' ? integralHubFactors : looseHubFactors;
          const { F, V, f } = factorsOf(hub.largeThickness_mm / g0, hub.length_mm / h0);
          const e = F / h0;
          const d = (U * h0 * g0 ** 2) / V;
          const L = (t * e + 1) / T + t ** 3 / d;
          return { F, V, f, e, d, L, h0, g0, g1: hub.largeThickness_mm };
        })();

  const rotation_deg = RIGIDITY_ROTATION_DEG[input.kind];
  const stateOf = (moment_Nmm: number, allowable_MPa: number, modulus_MPa: number): FlangeStressState => {
    if (hubbed === undefined) {
      const tangential_MPa = (Y * moment_Nmm) / (t ** 2 * B);
      const rigidityJ = (RIGIDITY_PLATE * moment_Nmm) / (modulus_MPa * t ** 3 * Math.log(K) * rotation_deg);
      return {
        longitudinalHub_MPa: 0,
        radial_MPa: 0,
        tangential_MPa,
        rigidityJ,
        ok: tangential_MPa <= allowable_MPa && rigidityJ <= 1,
      };
    }
    const { V, f, e, L, h0, g0, g1 } = hubbed;
    const hub_MPa = (f * moment_Nmm) / (L * g1 ** 2 * B);
    const radial_MPa = ((1.33 * t * e + 1) * moment_Nmm) / (L * t ** 2 * B);
    const tangential_MPa = (Y * moment_Nmm) / (t ** 2 * B) - Z * radial_MPa;
    const rigidityJ = (RIGIDITY_HUB * V * moment_Nmm) / (L * modulus_MPa * g0 ** 2 * rotation_deg * h0);
    return {
      longitudinalHub_MPa: hub_MPa,
      radial_MPa,
      tangential_MPa,
      rigidityJ,
      ok:
        hub_MPa <= 1.5 * allowable_MPa &&
        radial_MPa <= allowable_MPa &&
        tangential_MPa <= allowable_MPa &&
        (hub_MPa + radial_MPa) / 2 <= allowable_MPa &&
        (hub_MPa + tangential_MPa) / 2 <= allowable_MPa &&
        rigidityJ <= 1,
    };
  };
  const operating = stateOf(operating_Nmm, allowables.flangeOperating_MPa, allowables.elasticModulusOperating_MPa);
  const seating = stateOf(seating_Nmm, allowables.flangeSeating_MPa, allowables.elasticModulusSeating_MPa);
  const numbers = {
    K,
    Y,
    Z,
    HD_N,
    HT_N: H_N - HD_N,
    HG_N,
    arms,
    operating_Nmm,
    seating_Nmm,
    hubbed,
    rotation_deg,
    operating,
    seating,
  };
  const steps = input.working === true ? flangeStressSteps(input, numbers) : undefined;
  return explained(
    {
      K,
      T,
      U,
      Y,
      Z,
      ...(hubbed === undefined ? {} : { F: hubbed.F, V: hubbed.V, f: hubbed.f, e: hubbed.e, d: hubbed.d, L: hubbed.L }),
      momentOperating_Nm: finite('momentOperating_Nm', operating_Nmm / NMM_PER_NM),
      momentSeating_Nm: finite('momentSeating_Nm', seating_Nmm / NMM_PER_NM),
      longitudinalHub_MPa: Math.max(operating.longitudinalHub_MPa, seating.longitudinalHub_MPa),
      radial_MPa: Math.max(operating.radial_MPa, seating.radial_MPa),
      tangential_MPa: finite('tangential_MPa', Math.max(operating.tangential_MPa, seating.tangential_MPa)),
      rigidityJ: finite('rigidityJ', Math.max(operating.rigidityJ, seating.rigidityJ)),
      ok: operating.ok && seating.ok,
      operating,
      seating,
    },
    warnings,
    steps,
  );
}
