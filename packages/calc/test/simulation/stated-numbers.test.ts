import { describe, expect, it } from 'vitest';
import {
  adviseTightening,
  answerSimulation,
  computedLoads,
  passesNeeded,
  passesOf,
  simulateTightening,
  simulationBand,
  standardJoint,
  usualChoices,
} from '../../src/index.ts';
import { seededNormal } from '../../src/simulation/random.ts';
import { clockwiseRound } from '../../src/simulation/sequence-steps.ts';
import { joint, MIDDLE } from './support/joints.ts';

const names = (boltCount: number, tools: number) =>
  usualChoices(boltCount, tools).map(({ pattern, tools: at = 1 }) => `${pattern} ${at}`);

describe('patterns offered', () => {
  it('go by the number of bolts', () => {
    expect(names(8, 1)).toEqual(['legacy 1', 'circular 1']);
    expect(names(12, 1)).toContain('modified-legacy 1');
    expect(names(12, 1)).not.toContain('quadrant 1');
    expect(names(16, 1)).toContain('quadrant 1');
  });

  it('take two, four and eight tools where they divide the bolts', () => {
    const several = (boltCount: number) =>
      usualChoices(boltCount, 8).flatMap(({ pattern, tools }) => (pattern === 'simultaneous' ? [tools] : []));
    expect(several(24)).toEqual([2, 4, 8]);
    expect(several(12)).toEqual([2, 4]);
  });
});

describe('advice without a limit or times of the site', () => {
  const { patterns, limit_percent } = adviseTightening(MIDDLE);

  it('holds every bolt within ten percent', () => {
    expect(limit_percent).toBe(10);
  });

  // Common practice, README: 60 s from nut to nut, 300 s to set the tool anew for a pass.
  it('takes a minute a nut and five a pass', () => {
    for (const { moves, passes, time_min } of patterns) expect(time_min).toBeCloseTo(moves + 5 * passes.length, 9);
  });

  it('adds its extra rounds at full load', () => {
    for (const { choice, extraRounds = 0, passes } of patterns) {
      const rounds = passes.slice(passesOf(choice, 12).length);
      expect(rounds.map(({ percent }) => percent)).toEqual(Array.from({ length: extraRounds }, () => 100));
    }
    expect(Math.max(...patterns.map(({ extraRounds = 0 }) => extraRounds))).toBeGreaterThan(0);
  });

  it('compares twenty-four ways at most', () => {
    const choices = Array.from({ length: 25 }, () => ({ pattern: 'circular' as const }));
    expect(() => adviseTightening({ ...MIDDLE, choices })).toThrow(
      expect.objectContaining({ errors: [expect.objectContaining({ limit: 24 })] }),
    );
  });
});

describe('computed loads without other wishes', () => {
  const plan = computedLoads({ ...MIDDLE, cap_N: 1.4 * MIDDLE.target_N, division_N: MIDDLE.target_N / 50 });

  it('are compared with 30, 70 and 100 % and a clockwise round at full load', () => {
    const order = clockwiseRound(12);
    const passes = [30, 70, 100, 100].map((percent) => ({ percent, steps: order }));
    expect(plan.conventional).toEqual(passesNeeded({ ...MIDDLE, passes }, 10));
  });

  it('take a minute a nut and five minutes a setting of the tool', () => {
    expect(plan.worthwhile).toBe(true);
    expect(plan.time_min).toBeCloseTo(plan.moves + 5 * plan.turns, 9);
    expect(plan.usualTime_min).toBeCloseTo(plan.conventional.moves + 5 * plan.usualTurns, 9);
  });

  it.each([
    [1.029, 'cap-leaves-nothing-to-gain'],
    [1.035, 'tried'],
  ])('are tried from a cap of 1.03 of target on, not at %d', (cap, outcome) => {
    const one = { ...joint(4), ring: { ...joint(4).ring, bendingStiffness_Nmm2: 1e15, torsionStiffness_Nmm2: 1e15 } };
    const tried = computedLoads({ joint: one, target_N: 1e5, cap_N: cap * 1e5, division_N: 500 });
    expect(tried.statement.code === 'cap-leaves-nothing-to-gain').toBe(outcome !== 'tried');
  });
});

describe('the band', () => {
  const passes = passesOf({ pattern: 'legacy' }, 12);

  it('of gasket data lies between half and one and a half times the compression', () => {
    const finals = [0.5, 1, 1.5].map(
      (compressionFactor) => simulateTightening({ ...MIDDLE, passes, choices: { compressionFactor } }).final,
    );
    const { low, high } = simulationBand({ ...MIDDLE, passes });
    for (const part of ['min', 'mean', 'max'] as const) {
      expect(low[part]).toBeCloseTo(Math.min(...finals.map((final) => final[part])), 9);
      expect(high[part]).toBeCloseTo(Math.max(...finals.map((final) => final[part])), 9);
    }
  });

  it('of scatter takes sixty draws where nobody says how many', () => {
    const scatter = { scatter_percent: 25, seed: 3 };
    expect(simulationBand({ ...MIDDLE, passes }, scatter)).toEqual(
      simulationBand({ ...MIDDLE, passes }, { ...scatter, runs: 60 }),
    );
  });

  // All bolts at once: each ends at the load that its tool came to, so the drawn loads are the answer.
  it('of scatter is that of the tools where all bolts are tightened together', () => {
    const together = [{ percent: 100, steps: [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]] }];
    const runs = 400;
    const { low, high } = simulationBand({ ...MIDDLE, passes: together }, { scatter_percent: 30, seed: 9, runs });
    const normal = seededNormal(9);
    const means = Array.from({ length: runs }, () => {
      // Half the width of 95 in 100 is two deviations: 15 %.
      const loads = Array.from({ length: 12 }, () => 100 * (1 + 0.15 * normal()));
      return loads.reduce((sum, load) => sum + load, 0) / 12;
    }).sort((a, b) => a - b);
    expect(low.mean).toBeCloseTo(means[Math.round(0.05 * (runs - 1))] ?? 0, 6);
    expect(high.mean).toBeCloseTo(means[Math.round(0.95 * (runs - 1))] ?? 0, 6);
  });
});

describe('drawn numbers', () => {
  const normal = seededNormal(11);
  const drawn = Array.from({ length: 400_000 }, normal);
  const mean = (of: (value: number) => number) => drawn.reduce((sum, value) => sum + of(value), 0) / drawn.length;

  // Of a normal distribution cut off at ±3: moments and shares by Φ (tables of the normal distribution).
  it('are normal, with a deviation of one', () => {
    expect(mean((value) => value)).toBeCloseTo(0, 2);
    // E min(z², 9) = 1 − 2·[3·φ(3) − 8·(1 − Φ(3))] = 0.9950
    expect(Math.abs(mean((value) => value ** 2) - 0.995)).toBeLessThan(0.006);
    expect(Math.abs(mean((value) => Number(Math.abs(value) <= 1)) - 0.6827)).toBeLessThan(0.002);
    expect(Math.abs(mean((value) => Number(value > 0)) - 0.5)).toBeLessThan(0.003);
  });

  it('stop at three deviations', () => {
    expect(Math.max(...drawn.slice(0, 100_000))).toBe(3);
    expect(Math.min(...drawn.slice(0, 100_000))).toBe(-3);
  });
});

describe('an answer on a standard joint', () => {
  const standard = {
    standard: 'ASME-B16.5',
    size: 'NPS6',
    rating: '300',
    kind: 'weld-neck-pair',
    gasket: { family: 'spiral-wound' },
  } as const;
  const passes = passesOf({ pattern: 'legacy' }, 12);

  // An estimate of ours: a steel ring 3 mm thick and 5 mm wide outside the winding, E = 200 GPa.
  it('stops the faces on a guide ring of steel, 5 mm wide and 3 mm thick', () => {
    const answer = answerSimulation({
      joint: standard,
      target_MPa: 345,
      area: 'tensile',
      passes,
      options: { guideRingClosure_mm: 1 },
    });
    const prepared = standardJoint(standard);
    const { final } = simulateTightening({
      joint: {
        ...prepared.joint,
        guideRing: {
          closure_mm: 1,
          diameter_mm: prepared.joint.gasket.contactOutside_mm + 5,
          stiffness_N_per_mm2: (200_000 * 5) / 3,
        },
      },
      target_N: 345 * prepared.tensileArea_mm2,
      passes,
    });
    expect(answer.final?.min).toBeCloseTo(final.min, 9);
    expect(answer.final?.mean).toBeCloseTo(final.mean, 9);
  });

  it.each([
    [208, 28],
    [600, 12],
  ])('of %d steps draws %d times: 6000 steps in all, and twelve draws at least', (steps, runs) => {
    const long = [{ percent: 100, steps: Array.from({ length: steps }, (_, step) => [(step % 12) + 1]) }];
    const { band } = answerSimulation({
      joint: standard,
      target_MPa: 345,
      area: 'tensile',
      passes: long,
      options: { scatter_percent: 20, seed: 4 },
    });
    const { joint: flange, tensileArea_mm2 } = standardJoint(standard);
    expect(band).toEqual(
      simulationBand(
        { joint: flange, target_N: 345 * tensileArea_mm2, passes: long },
        { scatter_percent: 20, seed: 4, runs },
      ),
    );
  });

  it('takes two hundred bolts and no more, four and no fewer', () => {
    const round = (boltCount: number) => () =>
      simulateTightening({ joint: { ...joint(24), boltCount }, target_N: 1e5, passes: [{ steps: [[1]] }] });
    expect(round(200)).not.toThrow();
    const limited = (limit: number) => expect.objectContaining({ errors: [expect.objectContaining({ limit })] });
    expect(round(201)).toThrow(limited(200));
    expect(round(3)).toThrow(limited(4));
  });
});
