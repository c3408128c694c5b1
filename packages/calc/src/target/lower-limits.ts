import { gasketLoads } from '../code-loads/gasket-loads.ts';
import { gasketFactors } from '../gaskets/gasket-data.ts';
import { show, type WorkingStep } from '../working.ts';
import type { Joint } from './joint.ts';
import { limitList } from './limit-list.ts';
import type { TargetRequest, WindowLimit } from './request.ts';
import type { ThermalChange } from './thermal.ts';

const NMM_PER_NM = 1000;
const JCM = 'ASME PCC-1 joint component method';

/** m and y for the code's loads: given, or the family's row when the table has only one metal for it. */
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
export function lowerLimits(
  input: TargetRequest,
  joint: Joint,
  thermal: ThermalChange | undefined,
  steps: WorkingStep[] | undefined,
): readonly WindowLimit[] {
  const { service, policy, gasket } = input;
  const { gasketArea_mm2: Ag, remainingShare: g, area_mm2, count } = joint;
  const boltArea_mm2 = area_mm2 * count;
  const bolts = () => `(${show(area_mm2)} × ${count})`;
  const source = `${JCM}; gasket: ${joint.limits.source}`;
  const full = { gasketWidth: 'full' } as const;
  const { limits, add } = limitList('lower', input.area, steps);

  add({
    name: 'bolt-minimum',
    boltStress_MPa: (policy.minimumBoltUtilisation * joint.yield_MPa * joint.tensileArea_mm2) / area_mm2,
    source: 'site policy on ambient yield, on the tensile area',
    formula: 'share·yield·At/Ab',
    text: () =>
      `${show(policy.minimumBoltUtilisation)} × ${show(joint.yield_MPa)} × ${show(joint.tensileArea_mm2)} / ${show(area_mm2)}`,
  });
  add({
    name: 'gasket-seating',
    boltStress_MPa: (joint.limits.seating_MPa * Ag) / boltArea_mm2,
    source,
    formula: 'SgS·Ag/(Ab·nb)',
    text: () => `${show(joint.limits.seating_MPa)} × ${show(Ag)} / ${bolts()}`,
    more: full,
  });

  const end_mm2 = (Math.PI / 4) * gasket.contactInside_mm ** 2;
  const needed_N = (pressure_MPa: number, external_N: number) =>
    joint.limits.operating_MPa * Ag + end_mm2 * pressure_MPa + external_N;
  const neededText = (pressure_MPa: number, external_N: number) =>
    `(${show(joint.limits.operating_MPa)} × ${show(Ag)} + π / 4 × ${show(gasket.contactInside_mm)}^2 × ${show(pressure_MPa)} + ${show(external_N)})`;
  const external_N = externalLoad_N(input);
  add({
    name: 'gasket-operating',
    boltStress_MPa: needed_N(service.pressure_MPa, external_N) / g / boltArea_mm2,
    source,
    formula: '(SgO·Ag + π/4·GID²·P + F + 4·M/Dm)/(g·Ab·nb)',
    text: () => `${neededText(service.pressure_MPa, external_N)} / ${show(g)} / ${bolts()}`,
    more: full,
  });
  if (thermal !== undefined && thermal.loss_MPa > 0) {
    add({
      name: 'gasket-thermal-loss',
      boltStress_MPa: (needed_N(service.pressure_MPa, external_N) / boltArea_mm2 + thermal.loss_MPa) / g,
      source: `${source}; ${thermal.source}`,
      formula: '((SgO·Ag + π/4·GID²·P + F + 4·M/Dm)/(Ab·nb) + ΔSb)/g',
      text: () =>
        `(${neededText(service.pressure_MPa, external_N)} / ${bolts()} + ${show(thermal.loss_MPa)}) / ${show(g)}`,
      more: full,
    });
  }
  const { testPressure_MPa } = service;
  if (testPressure_MPa !== undefined) {
    add({
      name: 'gasket-test',
      boltStress_MPa: needed_N(testPressure_MPa, 0) / g / boltArea_mm2,
      source: `${JCM}, at the test pressure; gasket: ${joint.limits.source}`,
      formula: '(SgO·Ag + π/4·GID²·Pt)/(g·Ab·nb)',
      text: () => `${neededText(testPressure_MPa, 0)} / ${show(g)} / ${bolts()}`,
      more: full,
    });
  }

  const factors = codeFactorsOf(input);
  if (factors === undefined) return limits;
  const { operatingBoltLoad_N, seatingBoltLoad_N, working } = gasketLoads({
    gasketOutside_mm: gasket.contactOutside_mm,
    gasketInside_mm: gasket.contactInside_mm,
    m: factors.m,
    y_MPa: factors.y_MPa,
    pressure_MPa: service.pressure_MPa,
    axialForce_N: service.axialForce_N ?? 0,
    moment_Nm: service.moment_Nm ?? 0,
    facing: gasket.family === 'ring-joint' ? 'ring-joint' : 'flat',
    working: steps !== undefined,
  });
  if (working !== undefined) steps?.push(...working);
  const addCode = (name: string, load_N: number, formula: string) =>
    add({
      name,
      boltStress_MPa: load_N / boltArea_mm2,
      source: `ASME BPVC VIII-1 Appendix 2; ${factors.source}`,
      formula,
      text: () => `${show(load_N)} / ${bolts()}`,
      more: joint.rated ? CODE_ADVISORY : CODE,
    });
  addCode('code-operating', operatingBoltLoad_N, 'Wm1/(Ab·nb)');
  addCode('code-seating', seatingBoltLoad_N, 'Wm2/(Ab·nb)');
  return limits;
}

const CODE = { gasketWidth: 'effective' } as const;
const CODE_ADVISORY = { ...CODE, advisory: true } as const;
