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
  readonly hubbed: { readonly f: number; readonly e: number; readonly L: number; readonly g1: number } | undefined;
  readonly operating: FlangeStressState;
  readonly seating: FlangeStressState;
}

/** Steps of the flange stresses, in the order of the code. */
export function flangeStressSteps(input: FlangeStressRequest, numbers: FlangeStressNumbers): WorkingStep[] {
  const { outsideDiameter_mm: A, insideDiameter_mm: B, thickness_mm: t, loads } = input;
  const { K, Y, Z, HD_N, HT_N, HG_N, arms, operating_Nmm, seating_Nmm, hubbed, operating, seating } = numbers;
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
  for (const [state, moment_Nmm, name] of [
    [operating, operating_Nmm, 'operation'],
    [seating, seating_Nmm, 'seating'],
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
    steps.push({
      symbol: 'ST',
      meaning: `tangential stress, ${name}`,
      formula: hubbed === undefined ? 'Y·M/(t²·B)' : 'Y·M/(t²·B) − Z·SR',
      substituted: `${show(Y)} × ${show(moment_Nmm)} / (${show(t)}^2 × ${show(B)}) − ${show(Z)} × ${show(state.radial_MPa)}`,
      value: state.tangential_MPa,
      unit: 'MPa',
      source,
    });
  }
  return steps;
}
