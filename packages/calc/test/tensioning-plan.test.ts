import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CalcRefusal,
  simulateTightening,
  standardJoint,
  type TensioningPlanRequest,
  tensioner,
  tensioningPlan,
} from '../src/index.ts';

const JOINT = {
  standard: 'ASME-B16.5',
  size: 'NPS8',
  rating: '300',
  kind: 'weld-neck-pair',
  gasket: { family: 'spiral-wound' },
} as const;
const HALF: TensioningPlanRequest = {
  thread: '7/8-9 UNC',
  boltCount: 12,
  residualLoad_N: 80_000,
  effectiveLength_mm: 106,
  hydraulicArea_mm2: 1500,
  coverage: 0.5,
  yield_MPa: 720,
  toolMaximumPressure_MPa: 150,
  gaugeDivision_MPa: 0.5,
  passPercents: [50, 100],
  joint: JOINT,
};
const refusedBy = (more: Partial<TensioningPlanRequest>): string => {
  try {
    tensioningPlan({ ...HALF, ...more });
  } catch (error) {
    if (error instanceof CalcRefusal) return error.errors[0]?.code ?? '';
    throw error;
  }
  return 'not refused';
};
const withoutJoint = (({ joint: _, ...rest }) => rest)(HALF);

describe('half of the bolts under tensioners at once', () => {
  const plan = tensioningPlan(HALF);

  it('takes every second bolt, and the first group higher than the last', () => {
    expect(plan.groups).toEqual([
      [1, 3, 5, 7, 9, 11],
      [2, 4, 6, 8, 10, 12],
    ]);
    const [a = 0, b = 0] = plan.passes.at(-1)?.groupPressures_MPa ?? [];
    expect(a).toBeGreaterThan(b);
    expect(plan.warnings.map(({ code }) => code)).toContain('group-pressures-simulated');
  });

  it('leaves every bolt with the target, as simulated with the pressures as set on the gauge', () => {
    const toLoad = (pressure_MPa: number) =>
      (100 * pressure_MPa * HALF.hydraulicArea_mm2) / plan.loadTransferFactor / HALF.residualLoad_N;
    const { steps } = simulateTightening({
      joint: standardJoint(JOINT).joint,
      target_N: HALF.residualLoad_N,
      passes: plan.passes.map(({ groupPressures_MPa }) => ({
        steps: plan.groups.map((bolts, group) => ({ bolts, load_percent: toLoad(groupPressures_MPa[group] ?? 0) })),
      })),
    });
    const ended = steps.at(-1)?.loads_percent ?? [];
    expect(ended).toHaveLength(12);
    for (const load of ended) expect(Math.abs(load - 100)).toBeLessThan(3);
  });

  it('a quarter at a time gives four groups, each with its own pressure', () => {
    const quarter = tensioningPlan({ ...HALF, residualLoad_N: 60_000, coverage: 0.25, passPercents: [100] });
    expect(quarter.groups).toHaveLength(4);
    expect(quarter.passes[0]?.groupPressures_MPa).toHaveLength(4);
  });
});

describe('all bolts at once', () => {
  it('need no simulation: tool load over hydraulic area, at a mark of the gauge', () => {
    const plan = tensioningPlan({ ...withoutJoint, coverage: 1 });
    const { pressure_MPa } = tensioner({ ...withoutJoint, coverage: 1 });
    expect(plan.passes.map(({ groupPressures_MPa }) => groupPressures_MPa.length)).toEqual([1, 1]);
    expect(plan.passes[1]?.groupPressures_MPa[0]).toBe(Math.round(pressure_MPa * 2) / 2);
  });

  it('are always at a mark, below the tool’s limit and below 95 % of yield', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20_000, max: 170_000 }), fc.constantFrom(0.25, 0.5, 1), (load, division) => {
        let plan: ReturnType<typeof tensioningPlan>;
        try {
          plan = tensioningPlan({
            ...withoutJoint,
            coverage: 1,
            residualLoad_N: load,
            gaugeDivision_MPa: division,
            toolMaximumPressure_MPa: 120,
          });
        } catch (error) {
          expect(error).toBeInstanceOf(CalcRefusal);
          return;
        }
        expect(plan.utilisation).toBeLessThanOrEqual(0.95);
        for (const pressure of plan.passes.flatMap(({ groupPressures_MPa }) => groupPressures_MPa)) {
          expect(pressure / division).toBeCloseTo(Math.round(pressure / division), 9);
          expect(pressure).toBeLessThanOrEqual(120);
        }
      }),
    );
  });
});

describe('there is no plan', () => {
  it.each<[string, Partial<TensioningPlanRequest>]>([
    ['tool-load-above-yield-limit', { residualLoad_N: 170_000, coverage: 1, toolMaximumPressure_MPa: 400 }],
    ['above-tool-pressure', { toolMaximumPressure_MPa: 40 }],
    ['gauge-division-too-coarse', { gaugeDivision_MPa: 25 }],
    ['coverage-does-not-fit', { boltCount: 13 }],
    ['out-of-range', { hydraulicArea_mm2: 0 }],
  ])('%s', (code, more) => {
    expect(refusedBy(more)).toBe(code);
  });

  it('for groups of a joint that cannot be simulated', () => {
    expect(() => tensioningPlan(withoutJoint)).toThrow(/each group needs its own pressure/);
  });
});
