import { gasketLoads } from '../code-loads/gasket-loads.ts';
import { gasketFactors } from '../gaskets/gasket-data.ts';
import { torsionFactor } from '../torque/assembly-load.ts';
import { show, type WorkingStep } from '../working.ts';
import type { Joint } from './joint.ts';
import type { TargetRequest, WindowLimit } from './request.ts';

const NMM_PER_NM = 1000;
const JCM = 'ASME PCC-1 joint component method';

/** Bolt stress, on the area of the request, that gives a load on all bolts together. */
const stressOf = (joint: Joint, load_N: number) => load_N / (joint.area_mm2 * joint.count);

/** m and y for the code's advisory loads: given, or the family's row when the table has only one metal for it. */
function codeFactorsOf(input: TargetRequest) {
  const given = input.gasket.codeFactors;
  if (given !== undefined) return given;
  const rows = gasketFactors(input.gasket.family);
  // Spiral wound has two rows by winding metal; stainless is the usual one and the higher.
  const row =
    input.gasket.family === 'spiral-wound' ? rows.find((r) => r.m === 3) : rows.length === 1 ? rows[0] : undefined;
  return row === undefined ? undefined : { m: row.m, y_MPa: row.y_MPa, source: row.source };
}

/** Pull that acts like the external force and moment together: F + 4·M/Dm on the mean gasket diameter. */
function externalLoad_N({ service, gasket }: TargetRequest): number {
  const mean_mm = (gasket.contactOutside_mm + gasket.contactInside_mm) / 2;
  return (service.axialForce_N ?? 0) + (4 * (service.moment_Nm ?? 0) * NMM_PER_NM) / mean_mm;
}

/** Every lower limit of the bolt stress. */
export function lowerLimits(input: TargetRequest, joint: Joint, steps: WorkingStep[] | undefined): WindowLimit[] {
  const { area, service, policy } = input;
  const { limits, gasketArea_mm2: Ag, remainingShare: g } = joint;
  const end_mm2 = (Math.PI / 4) * input.gasket.contactInside_mm ** 2;
  const bolts = `(${show(joint.area_mm2)} × ${joint.count})`;
  const lower: WindowLimit[] = [];
  const add = (
    name: string,
    boltStress_MPa: number,
    more: Partial<WindowLimit> & { source: string },
    text?: string,
  ) => {
    lower.push({ name, boltStress_MPa, area, ...more });
    if (text !== undefined) {
      steps?.push({
        symbol: 'Sb,min',
        meaning: `least bolt stress: ${name}`,
        formula: LOWER_FORMULAS[name] ?? '',
        substituted: text,
        value: boltStress_MPa,
        unit: 'MPa',
        source: more.source,
      });
    }
  };
  const withText = steps !== undefined;
  add(
    'bolt-minimum',
    (policy.minimumBoltUtilisation * joint.yield_MPa * joint.tensileArea_mm2) / joint.area_mm2,
    { source: 'site policy on ambient yield, on the tensile area' },
    withText
      ? `${show(policy.minimumBoltUtilisation)} × ${show(joint.yield_MPa)} × ${show(joint.tensileArea_mm2)} / ${show(joint.area_mm2)}`
      : undefined,
  );
  add(
    'gasket-seating',
    stressOf(joint, limits.seating_MPa * Ag),
    { gasketWidth: 'full', source: `${JCM}; gasket: ${limits.source}` },
    withText ? `${show(limits.seating_MPa)} × ${show(Ag)} / ${bolts}` : undefined,
  );
  const held = (pressure_MPa: number, external_N: number) =>
    stressOf(joint, (limits.operating_MPa * Ag + end_mm2 * pressure_MPa + external_N) / g);
  const heldText = (pressure_MPa: number, external_N: number) =>
    withText
      ? `(${show(limits.operating_MPa)} × ${show(Ag)} + π / 4 × ${show(input.gasket.contactInside_mm)}^2 × ${show(pressure_MPa)} + ${show(external_N)}) / ${show(g)} / ${bolts}`
      : undefined;
  const external_N = externalLoad_N(input);
  add(
    'gasket-operating',
    held(service.pressure_MPa, external_N),
    { gasketWidth: 'full', source: `${JCM}; gasket: ${limits.source}` },
    heldText(service.pressure_MPa, external_N),
  );
  if (service.testPressure_MPa !== undefined) {
    add(
      'gasket-test',
      held(service.testPressure_MPa, 0),
      { gasketWidth: 'full', source: `${JCM}, at the test pressure; gasket: ${limits.source}` },
      heldText(service.testPressure_MPa, 0),
    );
  }
  const factors = codeFactorsOf(input);
  if (factors !== undefined) {
    const loads = gasketLoads({
      gasketOutside_mm: input.gasket.contactOutside_mm,
      gasketInside_mm: input.gasket.contactInside_mm,
      m: factors.m,
      y_MPa: factors.y_MPa,
      pressure_MPa: service.pressure_MPa,
      axialForce_N: service.axialForce_N ?? 0,
      moment_Nm: service.moment_Nm ?? 0,
      facing: input.gasket.family === 'ring-joint' ? 'ring-joint' : 'flat',
    });
    const advisory = joint.rated ? ({ advisory: true } as const) : {};
    const source = `ASME BPVC VIII-1 Appendix 2; ${factors.source}`;
    add('code-operating', stressOf(joint, loads.operatingBoltLoad_N), {
      gasketWidth: 'effective',
      ...advisory,
      source,
    });
    add('code-seating', stressOf(joint, loads.seatingBoltLoad_N), { gasketWidth: 'effective', ...advisory, source });
  }
  return lower;
}

const LOWER_FORMULAS: Readonly<Record<string, string>> = {
  'bolt-minimum': 'share·yield·At/Ab',
  'gasket-seating': 'SgS·Ag/(Ab·nb)',
  'gasket-operating': '(SgO·Ag + π/4·GID²·P + F + 4·M/Dm)/(g·Ab·nb)',
  'gasket-test': '(SgO·Ag + π/4·GID²·Pt)/(g·Ab·nb)',
};

/** Every upper limit of the bolt stress. */
export function upperLimits(input: TargetRequest, joint: Joint, steps: WorkingStep[] | undefined): WindowLimit[] {
  const { area, policy } = input;
  const toArea = joint.tensileArea_mm2 / joint.area_mm2;
  const torsion = joint.torsion ? torsionFactor(joint.thread, joint.threadFriction) : 1;
  const upper: WindowLimit[] = [
    {
      name: 'bolt-maximum',
      boltStress_MPa: policy.maximumBoltUtilisation * joint.yield_MPa * toArea,
      area,
      scatterIncluded: true,
      source: 'site policy on ambient yield, on the tensile area, for the nominal stress',
    },
    {
      name: 'bolt-yield',
      boltStress_MPa: (joint.yield_MPa * toArea) / (torsion * (1 + joint.scatter)),
      area,
      scatterIncluded: true,
      source: `VDI 2230 torsion; scatter: ${joint.scatterSource}; ${joint.yieldSource}`,
    },
    {
      name: 'gasket-maximum',
      boltStress_MPa: stressOf(joint, joint.limits.maximum_MPa * joint.gasketArea_mm2),
      area,
      gasketWidth: 'full',
      source: `${JCM}; gasket: ${joint.limits.source}`,
    },
  ];
  const flange_MPa = input.flange.maximumBoltStress_MPa;
  if (flange_MPa !== undefined) {
    upper.push({
      name: 'flange-strength',
      boltStress_MPa: flange_MPa,
      area,
      source: input.flange.maximumBoltStressSource ?? 'entered',
    });
  }
  steps?.push(
    {
      symbol: 'Sb,max',
      meaning: 'highest bolt stress: bolt-maximum',
      formula: 'share·yield·At/Ab',
      substituted: `${show(policy.maximumBoltUtilisation)} × ${show(joint.yield_MPa)} × ${show(toArea)}`,
      value: upper[0]?.boltStress_MPa ?? 0,
      unit: 'MPa',
      source: 'site policy',
    },
    {
      symbol: 'Sb,max',
      meaning: 'highest bolt stress: bolt-yield with torsion and scatter',
      formula: 'yield·At/Ab/(torsion·(1 + scatter))',
      substituted: `${show(joint.yield_MPa)} × ${show(toArea)} / (${show(torsion)} × (1 + ${show(joint.scatter)}))`,
      value: upper[1]?.boltStress_MPa ?? 0,
      unit: 'MPa',
      source: 'VDI 2230',
    },
    {
      symbol: 'Sb,max',
      meaning: 'highest bolt stress: gasket-maximum',
      formula: 'SgM·Ag/(Ab·nb)',
      substituted: `${show(joint.limits.maximum_MPa)} × ${show(joint.gasketArea_mm2)} / (${show(joint.area_mm2)} × ${joint.count})`,
      value: upper[2]?.boltStress_MPa ?? 0,
      unit: 'MPa',
      source: JCM,
    },
  );
  return upper;
}
