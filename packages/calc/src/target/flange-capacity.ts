import { POSITIVE, requireInRange } from '../checks.ts';
import { flangeStress, RIGIDITY_ROTATION_DEG } from '../code-loads/flange-stress.ts';
import type { FlangeStress, FlangeStressState } from '../code-loads/flange-stress-request.ts';
import { gasketReaction } from '../code-loads/gasket-loads.ts';
import { CalcRefusal, refuse } from '../refusal.ts';
import { show, type Warning, type WorkingStep } from '../working.ts';
import {
  type FlangeStressAtTarget,
  flangeAtTarget,
  type LoadCase,
  REFERENCE_MPA,
  stressShare,
} from './flange-at-target.ts';
import { flangeDimensions } from './flange-dimensions.ts';
import type { Joint } from './joint.ts';
import type { FlangeStrengthInput, TargetRequest, WindowLimit } from './request.ts';

const NMM_PER_NM = 1000;
const SOURCE = 'ASME BPVC VIII-1 Appendix 2';

/** The flange under its bolts: how much it bears in each case, ready for limits and for the answer. */
export interface FlangeCapacity {
  readonly limits: readonly WindowLimit[];
  readonly warnings: readonly Warning[];
  readonly atTarget: (boltStress_MPa: number) => readonly FlangeStressAtTarget[];
}

function shareText(state: FlangeStressState, allowable_MPa: number): string {
  const hub = show(state.longitudinalHub_MPa);
  const radial = show(state.radial_MPa);
  const tangential = show(state.tangential_MPa);
  return `max(${hub} / 1.5, ${radial}, ${tangential}, (${hub} + ${radial}) / 2, (${hub} + ${tangential}) / 2) / ${show(allowable_MPa)}`;
}

/** Refusals of the flange stresses under the names of the target's request. */
function asTarget<Answer>(run: () => Answer): Answer {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof CalcRefusal)) throw error;
    throw new CalcRefusal(
      error.errors.map((item) => ({
        ...item,
        path: item.path.startsWith('loads.') ? 'gasket.contactOutside_mm' : `flange.strength.${item.path}`,
      })),
    );
  }
}

function stressesOf(input: TargetRequest, joint: Joint, strength: FlangeStrengthInput, pressure_MPa: number) {
  const { gasket, flange } = input;
  const { reactionDiameter_mm } = gasketReaction(
    gasket.contactOutside_mm,
    gasket.contactInside_mm,
    gasket.family === 'ring-joint' ? 'ring-joint' : 'flat',
  );
  const boltLoad_N = REFERENCE_MPA * joint.area_mm2 * joint.count;
  const dimensions = flangeDimensions(strength, flange, joint.flange);
  return asTarget(() =>
    flangeStress({
      ...dimensions,
      loads: {
        reactionDiameter_mm,
        equivalentPressure_MPa: pressure_MPa,
        operatingBoltLoad_N: boltLoad_N,
        seatingDesignLoad_N: boltLoad_N,
      },
      allowables: {
        flangeOperating_MPa: strength.allowableOperating_MPa,
        flangeSeating_MPa: strength.allowableAmbient_MPa,
        elasticModulusOperating_MPa: strength.elasticModulusOperating_MPa,
        elasticModulusSeating_MPa: strength.elasticModulusAmbient_MPa,
      },
      working: input.working === true,
    }),
  );
}

/** Pressure that acts like pressure, external force and moment together, on the gasket reaction. */
function equivalentPressure_MPa({ service, gasket }: TargetRequest): number {
  const { reactionDiameter_mm: G } = gasketReaction(
    gasket.contactOutside_mm,
    gasket.contactInside_mm,
    gasket.family === 'ring-joint' ? 'ring-joint' : 'flat',
  );
  const { pressure_MPa, axialForce_N = 0, moment_Nm = 0 } = service;
  return pressure_MPa + (16 * moment_Nm * NMM_PER_NM) / (Math.PI * G ** 3) + (4 * axialForce_N) / (Math.PI * G ** 2);
}

function casesOf(input: TargetRequest, joint: Joint, strength: FlangeStrengthInput) {
  const operating = stressesOf(input, joint, strength, equivalentPressure_MPa(input));
  const { testPressure_MPa } = input.service;
  const { allowableAmbient_MPa, allowableOperating_MPa, elasticModulusAmbient_MPa, elasticModulusOperating_MPa } =
    strength;
  const ownMoment_Nm = ({ momentOperating_Nm, momentSeating_Nm }: FlangeStress) =>
    momentOperating_Nm - momentSeating_Nm;
  const cold = { atReference: operating.seating, allowable_MPa: allowableAmbient_MPa };
  // Stresses go with the moment alone, the rotation with the modulus too.
  const hot = {
    ...operating.seating,
    rigidityJ: (operating.seating.rigidityJ * elasticModulusAmbient_MPa) / elasticModulusOperating_MPa,
  };
  const cases: LoadCase[] = [
    { name: 'assembly', ownMoment_Nm: 0, ...cold },
    {
      name: 'operating',
      ownMoment_Nm: ownMoment_Nm(operating),
      atReference: hot,
      allowable_MPa: allowableOperating_MPa,
    },
  ];
  if (testPressure_MPa !== undefined) {
    const tested = stressesOf(input, joint, strength, testPressure_MPa);
    cases.push({ name: 'test', ownMoment_Nm: ownMoment_Nm(tested), ...cold });
  }
  return { cases, reference: operating };
}

/**
 * Limits of the bolt stress that the flange itself sets: stresses in assembly, operation and test, rigidity, and the
 * rotation that the gasket bears. Undefined without `flange.strength`.
 *
 * Source: ASME BPVC VIII-1 Appendix 2 (2-6 to 2-8, 2-14): governing for custom flanges, advisory for flanges rated
 *   by their standard. The bolts keep their load under pressure; nothing is taken off for relaxation.
 * Formula: M = M0 + Sb·Ab·nb·(C − G)/2, with M0 the moment of pressure, external force and moment; every stress and
 *   J goes with M, so Sb,max = Sref·(Mref/u − M0)/Mref, u the share of the allowable at Mref.
 * @throws CalcRefusal `flange-dimensions-missing`, `flange-overloaded-by-pressure`, and those of flangeStress
 */
export function flangeCapacity(
  input: TargetRequest,
  joint: Joint,
  steps: WorkingStep[] | undefined,
): FlangeCapacity | undefined {
  const { strength, rotation } = input.flange;
  if (strength === undefined) return undefined;
  requireInRange([
    ['flange.strength.allowableAmbient_MPa', strength.allowableAmbient_MPa, POSITIVE],
    ['flange.strength.allowableOperating_MPa', strength.allowableOperating_MPa, POSITIVE],
    ['flange.strength.elasticModulusAmbient_MPa', strength.elasticModulusAmbient_MPa, POSITIVE],
    ['flange.strength.elasticModulusOperating_MPa', strength.elasticModulusOperating_MPa, POSITIVE],
  ]);
  const { cases, reference } = casesOf(input, joint, strength);
  const reference_Nm = reference.momentSeating_Nm;
  const rigidity_deg = RIGIDITY_ROTATION_DEG[strength.kind];
  const warnings: Warning[] = [];
  const limits: WindowLimit[] = [];
  steps?.push(
    ...(reference.working ?? [])
      .filter(({ symbol, meaning }) => symbol === 'K' || symbol === 'Mg' || meaning.endsWith('seating'))
      .map((step) => ({ ...step, meaning: `at ${REFERENCE_MPA} MPa bolt stress: ${step.meaning}` })),
  );

  const add = (name: string, { name: state, ownMoment_Nm }: LoadCase, share: number, source: string, text: string) => {
    // The code's limits are advisory for a rated flange; the rotation is the gasket's limit and always binds.
    const advisory = joint.rated && name !== 'flange-rotation';
    const boltStress_MPa = (REFERENCE_MPA * (reference_Nm / share - ownMoment_Nm)) / reference_Nm;
    steps?.push(
      {
        symbol: 'u',
        meaning: `share of what is allowed, at ${REFERENCE_MPA} MPa bolt stress and no pressure: ${name}, ${state}`,
        formula: name.startsWith('flange-stress')
          ? 'max(SH/1.5, SR, ST, (SH + SR)/2, (SH + ST)/2)/Sf'
          : 'rotation over its limit',
        substituted: text,
        value: share,
        unit: '',
        source,
      },
      {
        symbol: 'Sb,max',
        meaning: `highest bolt stress: ${name}, ${state}`,
        formula: 'Sref·(Mref/u − M0)/Mref',
        substituted: `${REFERENCE_MPA} × (${show(reference_Nm)} / ${show(share)} − ${show(ownMoment_Nm)}) / ${show(reference_Nm)}`,
        value: boltStress_MPa,
        unit: 'MPa',
        source,
      },
    );
    if (boltStress_MPa > 0) {
      limits.push({ name, boltStress_MPa, area: input.area, ...(advisory ? { advisory } : {}), source });
      return;
    }
    const message = `Pressure, external force and moment alone take the flange beyond its ${name} (${state}), before any bolt load. Check dimensions, allowables and loads, or take a heavier flange.`;
    if (!advisory) refuse('flange.strength', 'flange-overloaded-by-pressure', message);
    warnings.push({ code: 'flange-overloaded-by-pressure', message: `${message} Advisory for a rated flange.` });
  };
  for (const one of cases) {
    add(
      `flange-stress-${one.name}`,
      one,
      stressShare(one.atReference, one.allowable_MPa),
      `${SOURCE}; ${strength.source}`,
      steps === undefined ? '' : shareText(one.atReference, one.allowable_MPa),
    );
  }
  // Rigidity and rotation: the softest case only, which is the one with the lowest limit.
  const addSoftest = (name: string, limit_deg: number, source: string) => {
    const room = ({ atReference, ownMoment_Nm }: LoadCase) =>
      (reference_Nm * limit_deg) / (atReference.rigidityJ * rigidity_deg) - ownMoment_Nm;
    const softest = cases.reduce((least, one) => (room(one) < room(least) ? one : least));
    const J = softest.atReference.rigidityJ;
    add(name, softest, (J * rigidity_deg) / limit_deg, source, `${show(J)} × ${rigidity_deg} / ${show(limit_deg)}`);
  };
  addSoftest('flange-rigidity', rigidity_deg, `${SOURCE} (2-14), J ≤ 1`);
  if (rotation !== undefined && rotation.flangeAtMaximum_deg === undefined) {
    const source = `elastic rotation from ${SOURCE} (2-14); limit: ${rotation.source}`;
    addSoftest('flange-rotation', rotation.gasketLimit_deg, source);
  }
  return {
    limits,
    warnings,
    atTarget: (boltStress_MPa) =>
      cases.map((one) => flangeAtTarget(one, { boltStress_MPa, reference_Nm, rigidity_deg, source: SOURCE }, steps)),
  };
}
