import { finite, NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import { type Explainable, type Explained, explained, show, stepsFor, type Warning } from '../working.ts';

export interface GasketLoadsRequest extends Explainable {
  readonly gasketOutside_mm: number;
  readonly gasketInside_mm: number;
  readonly m: number;
  readonly y_MPa: number;
  readonly pressure_MPa: number;
  /** `flat`: b0 = N/2. `ring-joint`: b0 = w/8 with the ring width w as the contact. */
  readonly facing?: 'flat' | 'ring-joint';
  /** External pull on the joint, N. */
  readonly axialForce_N?: number;
  /** External bending moment, N·m. */
  readonly moment_Nm?: number;
  /** Whether the equivalent pressure also stands in the gasket term; published sheets disagree. */
  readonly equivalentPressureInGasketTerm?: boolean;
}

export interface GasketLoads extends Explained {
  readonly effectiveWidth_mm: number;
  readonly reactionDiameter_mm: number;
  readonly equivalentPressure_MPa: number;
  readonly hydrostaticEndForce_N: number;
  readonly gasketOperatingLoad_N: number;
  readonly operatingBoltLoad_N: number;
  readonly seatingBoltLoad_N: number;
}

/** Basic width up to which the effective width equals it: 1/4 in. */
const NARROW_MM = 6.35;
/** b = 2.52·√b0 in the SI form of the code (0.5·√b0 in inches). */
const WIDE_FACTOR = 2.52;
const NMM_PER_NM = 1000;

/** Basic and effective width and diameter of the gasket reaction, ASME VIII-1 App. 2 Table 2-5.2. */
export function gasketReaction(outside_mm: number, inside_mm: number, facing: 'flat' | 'ring-joint') {
  const width_mm = (outside_mm - inside_mm) / 2;
  const basicWidth_mm = facing === 'ring-joint' ? width_mm / 8 : width_mm / 2;
  const narrow = basicWidth_mm <= NARROW_MM;
  const effectiveWidth_mm = narrow ? basicWidth_mm : WIDE_FACTOR * Math.sqrt(basicWidth_mm);
  const reactionDiameter_mm = narrow ? (outside_mm + inside_mm) / 2 : outside_mm - 2 * effectiveWidth_mm;
  return { width_mm, basicWidth_mm, narrow, effectiveWidth_mm, reactionDiameter_mm };
}

function check(input: GasketLoadsRequest): void {
  requireInRange([
    ['gasketOutside_mm', input.gasketOutside_mm, POSITIVE],
    ['gasketInside_mm', input.gasketInside_mm, POSITIVE],
    ['m', input.m, { min: 0, max: 20 }],
    ['y_MPa', input.y_MPa, { min: 0, max: 1000 }],
    ['pressure_MPa', input.pressure_MPa, NOT_NEGATIVE],
    ['axialForce_N', input.axialForce_N, {}],
    ['moment_Nm', input.moment_Nm, NOT_NEGATIVE],
  ]);
  if (input.gasketOutside_mm <= input.gasketInside_mm) {
    refuse(
      'gasketOutside_mm',
      'gasket-impossible',
      `The gasket has outside ${input.gasketOutside_mm} mm and inside ${input.gasketInside_mm} mm. The outside must be larger.`,
      input.gasketInside_mm,
    );
  }
}

/**
 * Bolt loads of the code for a gasket: operating and seating, with external force and moment.
 *
 * Source: ASME BPVC VIII-1 Appendix 2 (2-5); equivalent pressure after Kellogg.
 * Formula: b = b0 up to 6.35 mm, else 2.52·√b0; G = mean diameter, or outside − 2b;
 *   Pe = P + 16·M/(π·G³) + 4·F/(π·G²); H = π/4·G²·Pe; Hp = 2·b·π·G·m·P; Wm1 = H + Hp; Wm2 = π·b·G·y.
 * @param input.pressure_MPa gauge
 * @throws CalcRefusal `out-of-range`, `gasket-impossible`
 * Note: sheets disagree on P or Pe in the gasket term; P is used unless equivalentPressureInGasketTerm is true.
 */
export function gasketLoads(input: GasketLoadsRequest): GasketLoads {
  check(input);
  const facing = input.facing ?? 'flat';
  const {
    width_mm,
    basicWidth_mm,
    narrow,
    effectiveWidth_mm: b,
    reactionDiameter_mm: G,
  } = gasketReaction(input.gasketOutside_mm, input.gasketInside_mm, facing);
  const force_N = input.axialForce_N ?? 0;
  const moment_Nmm = (input.moment_Nm ?? 0) * NMM_PER_NM;
  const equivalent_MPa =
    input.pressure_MPa + (16 * moment_Nmm) / (Math.PI * G ** 3) + (4 * force_N) / (Math.PI * G ** 2);
  const gasketTerm_MPa = input.equivalentPressureInGasketTerm === true ? equivalent_MPa : input.pressure_MPa;
  const end_N = (Math.PI / 4) * G ** 2 * equivalent_MPa;
  const gasket_N = 2 * b * Math.PI * G * input.m * gasketTerm_MPa;
  const operating_N = finite('operatingBoltLoad_N', end_N + gasket_N);
  const seating_N = Math.PI * b * G * input.y_MPa;
  const warnings: Warning[] = [];
  if (force_N < 0) {
    warnings.push({
      code: 'compression-counted',
      message: `A compressive force of ${force_N} N was counted in favour of the joint: be sure that it is always there.`,
    });
  }
  if ((force_N !== 0 || moment_Nmm !== 0) && input.equivalentPressureInGasketTerm === undefined) {
    warnings.push({
      code: 'equivalent-pressure-form',
      message: 'The gasket term uses the pressure alone; some sheets use the equivalent pressure there too.',
    });
  }
  const source = 'ASME BPVC VIII-1 Appendix 2';
  const steps = stepsFor(input);
  steps?.push(
    {
      symbol: 'b0',
      meaning: 'basic gasket width',
      formula: facing === 'flat' ? 'N/2' : 'w/8',
      substituted: `(${show(input.gasketOutside_mm)} − ${show(input.gasketInside_mm)}) / 2 / ${facing === 'flat' ? 2 : 8}`,
      value: basicWidth_mm,
      unit: 'mm',
      source,
    },
    {
      symbol: 'b',
      meaning: 'effective gasket width',
      formula: narrow ? 'b0' : '2.52·√b0',
      substituted: narrow ? show(basicWidth_mm) : `${WIDE_FACTOR} × √(${show(basicWidth_mm)})`,
      value: b,
      unit: 'mm',
      source,
    },
    {
      symbol: 'G',
      meaning: 'diameter of the gasket reaction',
      formula: narrow ? 'mean diameter of the contact' : 'outside − 2·b',
      substituted: narrow
        ? `${show(input.gasketInside_mm)} + ${show(width_mm)}`
        : `${show(input.gasketOutside_mm)} − 2 × ${show(b)}`,
      value: G,
      unit: 'mm',
      source,
    },
    {
      symbol: 'Pe',
      meaning: 'pressure with external force and moment',
      formula: 'P + 16·M/(π·G³) + 4·F/(π·G²)',
      substituted: `${show(input.pressure_MPa)} + 16 × ${show(moment_Nmm)} / (π × ${show(G)}^3) + 4 × ${show(force_N)} / (π × ${show(G)}^2)`,
      value: equivalent_MPa,
      unit: 'MPa',
      source: 'equivalent pressure after Kellogg',
    },
    {
      symbol: 'H',
      meaning: 'hydrostatic end force',
      formula: 'π/4·G²·Pe',
      substituted: `π / 4 × ${show(G)}^2 × ${show(equivalent_MPa)}`,
      value: end_N,
      unit: 'N',
      source,
    },
    {
      symbol: 'Hp',
      meaning: 'gasket load in operation',
      formula: '2·b·π·G·m·P',
      substituted: `2 × ${show(b)} × π × ${show(G)} × ${show(input.m)} × ${show(gasketTerm_MPa)}`,
      value: gasket_N,
      unit: 'N',
      source,
    },
    {
      symbol: 'Wm1',
      meaning: 'bolt load in operation',
      formula: 'H + Hp',
      substituted: `${show(end_N)} + ${show(gasket_N)}`,
      value: operating_N,
      unit: 'N',
      source,
    },
    {
      symbol: 'Wm2',
      meaning: 'bolt load for seating',
      formula: 'π·b·G·y',
      substituted: `π × ${show(b)} × ${show(G)} × ${show(input.y_MPa)}`,
      value: seating_N,
      unit: 'N',
      source,
    },
  );
  return explained(
    {
      effectiveWidth_mm: b,
      reactionDiameter_mm: G,
      equivalentPressure_MPa: equivalent_MPa,
      hydrostaticEndForce_N: end_N,
      gasketOperatingLoad_N: gasket_N,
      operatingBoltLoad_N: operating_N,
      seatingBoltLoad_N: seating_N,
    },
    warnings,
    steps,
  );
}

/**
 * Bolt area that the code asks for and the seating design load.
 *
 * Source: ASME BPVC VIII-1 Appendix 2 (2-5 d, e). Am = max(Wm1/Sb, Wm2/Sa), W = (Am + Ab)/2·Sa.
 */
export function requiredBoltArea(input: {
  readonly operatingBoltLoad_N: number;
  readonly seatingBoltLoad_N: number;
  readonly boltAllowableOperating_MPa: number;
  readonly boltAllowableAmbient_MPa: number;
  readonly boltArea_mm2: number;
}): { readonly requiredArea_mm2: number; readonly seatingDesignLoad_N: number; readonly ok: boolean } {
  requireInRange([
    ['operatingBoltLoad_N', input.operatingBoltLoad_N, NOT_NEGATIVE],
    ['seatingBoltLoad_N', input.seatingBoltLoad_N, NOT_NEGATIVE],
    ['boltAllowableOperating_MPa', input.boltAllowableOperating_MPa, POSITIVE],
    ['boltAllowableAmbient_MPa', input.boltAllowableAmbient_MPa, POSITIVE],
    ['boltArea_mm2', input.boltArea_mm2, POSITIVE],
  ]);
  const requiredArea_mm2 = Math.max(
    input.operatingBoltLoad_N / input.boltAllowableOperating_MPa,
    input.seatingBoltLoad_N / input.boltAllowableAmbient_MPa,
  );
  return {
    requiredArea_mm2,
    seatingDesignLoad_N: ((requiredArea_mm2 + input.boltArea_mm2) / 2) * input.boltAllowableAmbient_MPa,
    ok: input.boltArea_mm2 >= requiredArea_mm2,
  };
}
