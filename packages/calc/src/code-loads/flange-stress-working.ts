import { show, type WorkingStep } from '../working.ts';
import type { FlangeStressRequest, FlangeStressState } from './flange-stress-request.ts';

const NMM_PER_NM = 1000;

/** Everything that stands in the working of the flange stresses. */
export interface FlangeStressNumbers {
  readonly K: number;
  readonly Y: number;
  readonly Z: number;
  readonly HD_N: number;
  readonly HT_N: number;
  readonly HG_N: number;
  readonly arms: { readonly hub_mm: number; readonly face_mm: number; readonly gasket_mm: number };
  readonly operating_Nmm: number;
  readonly seating_Nmm: number;
  readonly hubbed:
    | {
        readonly V: number;
        readonly f: number;
        readonly e: number;
        readonly L: number;
        readonly h0: number;
        readonly g0: number;
        readonly g1: number;
      }
    | undefined;
  readonly rotation_deg: number;
  readonly operating: FlangeStressState;
  readonly seating: FlangeStressState;
}

/** Steps of the flange stresses, in the order of the code. */
export function flangeStressSteps(input: FlangeStressRequest, numbers: FlangeStressNumbers): WorkingStep[] {
  const { outsideDiameter_mm: A, insideDiameter_mm: B, thickness_mm: t, loads } = input;
  const { K, Y, Z, HD_N, HT_N, HG_N, arms, operating_Nmm, seating_Nmm, hubbed, rotation_deg } = numbers;
  const { operating, seating } = numbers;
  const { elasticModulusOperating_MPa, elasticModulusSeating_MPa } = input.allowables;
  const steps: WorkingStep[] = [];
  const source = 'ASME BPVC VIII-1 Appendix 2';
  steps.push(
    {
      symbol: 'K',
      meaning: 'outside over inside diameter',
      formula: 'A/B',
      substituted: `${show(A)} / ${show(B)}`,
      value: K,
      unit: '',
      source,
    },
    {
      symbol: 'Mo',
      meaning: 'moment in operation',
      formula: 'HD·hD + HT·hT + HG·hG',
      substituted: `(${show(HD_N)} × ${show(arms.hub_mm)} + ${show(HT_N)} × ${show(arms.face_mm)} + ${show(HG_N)} × ${show(arms.gasket_mm)}) / ${NMM_PER_NM}`,
      value: operating_Nmm / NMM_PER_NM,
      unit: 'N·m',
      source,
    },
    {
      symbol: 'Mg',
      meaning: 'moment of seating',
      formula: 'W·(C − G)/2',
      substituted: `${show(loads.seatingDesignLoad_N)} × ${show(arms.gasket_mm)} / ${NMM_PER_NM}`,
      value: seating_Nmm / NMM_PER_NM,
      unit: 'N·m',
      source,
    },
  );
  for (const [state, moment_Nmm, name, modulus_MPa] of [
    [operating, operating_Nmm, 'operation', elasticModulusOperating_MPa],
    [seating, seating_Nmm, 'seating', elasticModulusSeating_MPa],
  ] as const) {
    if (hubbed !== undefined) {
      steps.push(
        {
          symbol: 'SH',
          meaning: `longitudinal hub stress, ${name}`,
          formula: 'f·M/(L·g1²·B)',
          substituted: `${show(hubbed.f)} × ${show(moment_Nmm)} / (${show(hubbed.L)} × ${show(hubbed.g1)}^2 × ${show(B)})`,
          value: state.longitudinalHub_MPa,
          unit: 'MPa',
          source,
        },
        {
          symbol: 'SR',
          meaning: `radial stress, ${name}`,
          formula: '(1.33·t·e + 1)·M/(L·t²·B)',
          substituted: `(1.33 × ${show(t)} × ${show(hubbed.e)} + 1) × ${show(moment_Nmm)} / (${show(hubbed.L)} × ${show(t)}^2 × ${show(B)})`,
          value: state.radial_MPa,
          unit: 'MPa',
          source,
        },
      );
    }
    steps.push(
      {
        symbol: 'ST',
        meaning: `tangential stress, ${name}`,
        formula: hubbed === undefined ? 'Y·M/(t²·B)' : 'Y·M/(t²·B) − Z·SR',
        substituted: `${show(Y)} × ${show(moment_Nmm)} / (${show(t)}^2 × ${show(B)}) − ${show(Z)} × ${show(state.radial_MPa)}`,
        value: state.tangential_MPa,
        unit: 'MPa',
        source,
      },
      {
        symbol: 'J',
        meaning: `rigidity index, ${name}`,
        formula: hubbed === undefined ? '109.4·M/(E·t³·ln K·KL)' : '52.14·V·M/(L·E·g0²·KI·h0)',
        substituted:
          hubbed === undefined
            ? `109.4 × ${show(moment_Nmm)} / (${show(modulus_MPa)} × ${show(t)}^3 × ln(${show(K)}) × ${rotation_deg})`
            : `52.14 × ${show(hubbed.V)} × ${show(moment_Nmm)} / (${show(hubbed.L)} × ${show(modulus_MPa)} × ${show(hubbed.g0)}^2 × ${rotation_deg} × ${show(hubbed.h0)})`,
        value: state.rigidityJ,
        unit: '',
        source,
      },
    );
  }
  return steps;
}
