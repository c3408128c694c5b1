import { describe, expect, it } from 'vitest';
import { type ComputedLoads, computedLoads, simulateTightening, toolCap } from '../../src/index.ts';
import { groupLoads, roundToDivision } from '../../src/simulation/set-values.ts';
import { LARGE, MIDDLE, standardAt345 } from './support/joints.ts';

const plan = (flange: typeof LARGE, cap: number): ComputedLoads =>
  computedLoads({ ...flange, cap_N: cap * flange.target_N, division_N: flange.target_N / 50 });

describe('computed pass loads', () => {
  it('24 bolts with a cap of 1.4 × target need three passes, 72 moves', () => {
    const { worthwhile, passes, moves, final, statement, movesSaved } = plan(LARGE, 1.4);
    expect(worthwhile).toBe(true);
    expect(passes).toHaveLength(3);
    expect(moves).toBe(72);
    expect(movesSaved).toBeGreaterThan(40);
    expect(final!.min).toBeGreaterThan(95);
    expect(final!.max).toBeLessThan(105);
    expect(statement.code).toBe('computed-loads-save-moves');
  });

  it.each([
    ['NPS8', '150'],
    ['NPS6', '300'],
    ['NPS12', '300'],
  ])('a small joint (%s class %s) needs one or two passes with that cap', (size, rating) => {
    const { passes } = plan(standardAt345('ASME-B16.5', size, rating), 1.4);
    expect(passes.length).toBeGreaterThanOrEqual(1);
    expect(passes.length).toBeLessThanOrEqual(2);
  });

  it.each([1.2, 1.4])('no set value passes a cap of %f, each is on the division, four at most', (cap) => {
    const { passes } = plan(LARGE, cap);
    for (const { setValues_N, steps } of passes) {
      expect(setValues_N.length).toBeLessThanOrEqual(4);
      for (const value of setValues_N) {
        expect(value).toBeLessThanOrEqual(cap * LARGE.target_N * (1 + 1e-9));
        const divisions = value / (LARGE.target_N / 50);
        expect(Math.abs(divisions - Math.round(divisions))).toBeLessThan(1e-6);
      }
      for (const load of steps.flatMap((step) => step.loads_N)) expect(setValues_N).toContain(load);
    }
  });

  it('says what the plan does as rounded: the simulation of its sequence ends the same', () => {
    const { sequence, final } = plan(MIDDLE, 1.4);
    const again = simulateTightening({ ...MIDDLE, passes: sequence, record: 'none' }).final;
    expect(again.min).toBeCloseTo(final!.min, 4);
    expect(again.max).toBeCloseTo(final!.max, 4);
  });

  it.each([
    [1.2, 95, 104],
    [1.4, 92, 108],
  ])('with a cap of %f wrong gasket data leaves the loads within %i-%i %%', (cap, low, high) => {
    const { sequence } = plan(LARGE, cap);
    for (const compressionFactor of [0.5, 1.5]) {
      const { final } = simulateTightening({
        ...LARGE,
        passes: sequence,
        record: 'none',
        choices: { compressionFactor },
      });
      expect(final.min).toBeGreaterThan(low);
      expect(final.max).toBeLessThan(high);
    }
  });

  it('where the cap is the target itself, conventional passes stay', () => {
    const { worthwhile, passes, statement, movesSaved } = plan(LARGE, 1);
    expect(worthwhile).toBe(false);
    expect(passes).toEqual([]);
    expect(movesSaved).toBe(0);
    expect(statement.code).toBe('cap-leaves-nothing-to-gain');
  });
});

describe('the cap of a tool load', () => {
  const base = { thread: '1 1/2-8 UN', utilisation: 0.9, threadFriction: 0.14, scatter_percent: 10 };
  const target_N = LARGE.target_N;

  it('has torsion and scatter in it: B7 leaves room above 345 MPa, B7M little', () => {
    const b7 = toolCap({ ...base, yield_MPa: 720 });
    const b7m = toolCap({ ...base, yield_MPa: 550 });
    expect(b7.governedBy).toBe('bolt');
    expect(b7.cap_N / target_N).toBeGreaterThan(1.3);
    expect(b7m.cap_N / target_N).toBeLessThan(1.2);
    expect(toolCap({ ...base, yield_MPa: 720, scatter_percent: 30 }).cap_N).toBeLessThan(b7.cap_N);
  });

  it('names the gasket or the flange where they are weaker', () => {
    expect(toolCap({ ...base, yield_MPa: 720, flangeLimit_N: target_N }).governedBy).toBe('flange');
    const gasket = toolCap({
      ...base,
      yield_MPa: 720,
      gasketMaximum_MPa: 100,
      gasketArea_mm2: 59_000,
      boltCount: 24,
    });
    expect(gasket.governedBy).toBe('gasket');
    expect(gasket.cap_N).toBeCloseTo((100 * 59_000) / 24 / 1.1, 3);
  });
});

describe('set values', () => {
  it('are shared by bolts in a row where that sets the tool much less often', () => {
    const flange = standardAt345('ASME-B16.5', 'NPS8', '150');
    const found = computedLoads({
      ...flange,
      cap_N: 1.25 * flange.target_N,
      division_N: flange.target_N / 50,
      setValues: 3,
    });
    expect(found.worthwhile).toBe(true);
    for (const { setValues_N, steps } of found.passes) {
      const loads = steps.flatMap((step) => step.loads_N);
      const turns = loads.filter((load, index) => index === 0 || load !== loads[index - 1]).length;
      expect(turns).toBe(setValues_N.length);
    }
    expect(found.turns).toBeLessThanOrEqual(3 * found.passes.length);
    expect(found.usualTurns).toBe(4);
  });

  it('in a row keep the order of working', () => {
    const { values, group } = groupLoads([100, 101, 150, 149, 100], 3, 1, 1000, 'in-a-row');
    expect(group).toEqual([0, 0, 1, 1, 2]);
    expect(values).toHaveLength(3);
  });

  it('are the best few groups of the loads', () => {
    const { values, group } = groupLoads([101, 150, 99, 149, 200, 100, 151], 3, 1, 1000);
    expect(values).toEqual([100, 150, 200]);
    expect(group).toEqual([0, 1, 0, 1, 2, 0, 1]);
  });

  it('are fewer where the loads are alike, and never above the cap', () => {
    expect(groupLoads([100, 100, 100], 4, 5, 1000).values).toEqual([100]);
    expect(roundToDivision(148, 10, 145)).toBe(140);
    expect(roundToDivision(1, 10)).toBe(10);
  });
});
