import { describe, expect, it } from 'vitest';
import { passesOf, simulateTightening, type TighteningPass } from '../../src/index.ts';
import { jointModel } from '../../src/simulation/joint-model.ts';
import { JointState } from '../../src/simulation/joint-state.ts';
import { bondedGasket, joint, LARGE, MIDDLE } from './support/joints.ts';

const legacy = (boltCount: number) => passesOf({ pattern: 'legacy' }, boltCount);

function relabelled(passes: readonly TighteningPass[], to: (bolt: number) => number): readonly TighteningPass[] {
  return passes.map((pass) => ({
    ...pass,
    steps: (pass.steps as readonly (readonly number[])[]).map((step) => step.map(to)),
  }));
}

describe('at every step', () => {
  it.each([
    { name: 'class 300 NPS 24', ...LARGE, guideRing: undefined },
    {
      name: 'class 300 NPS 6 with its guide ring touching',
      ...MIDDLE,
      guideRing: { closure_mm: 1.1, diameter_mm: 215, stiffness_N_per_mm2: 3e5 },
    },
  ])('$name: the bolts balance the gasket and the stop', ({ joint: flange, target_N, guideRing }) => {
    const model = jointModel(guideRing === undefined ? flange : { ...flange, guideRing });
    const state = new JointState(model, target_N);
    let stopped = 0;
    for (const pass of legacy(flange.boltCount))
      for (const [bolt = 1] of pass.steps as readonly (readonly number[])[]) {
        state.tighten([bolt - 1], [((pass.percent ?? 100) / 100) * target_N]);
        const stress = state.gasketStress();
        const radiusAt = (lever: number) => model.joint.ring.radius_mm * (1 + lever);
        let gasket_N = 0;
        const moment = { x: 0, y: 0 };
        const add = (force: number, radius: number, angle: number) => {
          moment.x += force * radius * Math.cos(angle);
          moment.y += force * radius * Math.sin(angle);
        };
        for (let station = 0; station < model.stations; station++) {
          const inner = stress[2 * station]! * model.innerArea;
          const outer = stress[2 * station + 1]! * model.outerArea;
          gasket_N += inner + outer;
          const angle = (2 * Math.PI * station) / model.stations;
          add(inner, radiusAt(model.innerLever), angle);
          add(outer, radiusAt(model.outerLever), angle);
        }
        const bolts_N = state.loads.reduce((sum, load) => sum + load, 0);
        state.loads.forEach((load, b) => {
          add(-load, flange.boltCircle_mm / 2, (2 * Math.PI * b) / flange.boltCount);
        });
        if (state.stopForce() === 0) {
          // The elements give a rigid tilt a trace of strain: moments balance to that trace.
          const scale = target_N * flange.boltCircle_mm;
          expect(Math.hypot(moment.x, moment.y)).toBeLessThan(1e-3 * scale);
        }
        stopped = Math.max(stopped, state.stopForce());
        expect(Math.abs(bolts_N - gasket_N - state.stopForce())).toBeLessThan(1e-6 * target_N);
      }
    expect(stopped > 0).toBe(guideRing !== undefined);
  });

  it('the nut that was tightened holds its load', () => {
    const { steps } = simulateTightening({ ...LARGE, passes: legacy(24).slice(0, 1) });
    for (const step of steps) expect(step.loads_percent[step.bolts[0]! - 1]).toBeCloseTo(30, 6);
  });

  it('a nut already above its load does not move', () => {
    const state = new JointState(jointModel(MIDDLE.joint), MIDDLE.target_N);
    state.tighten([0], [MIDDLE.target_N]);
    const before = { takeUp: state.takeUp[0], loads: Float64Array.from(state.loads) };
    state.tighten([0], [0.5 * MIDDLE.target_N]);
    expect(state.takeUp[0]).toBe(before.takeUp);
    state.loads.forEach((load, bolt) => {
      expect(Math.abs(load - before.loads[bolt]!)).toBeLessThan(1e-6 * MIDDLE.target_N);
    });
  });
});

describe('symmetry', () => {
  const passes = legacy(24);
  const plain = simulateTightening({ ...LARGE, passes, record: 'none' }).loads_percent;

  it('turning the sequence turns the loads', () => {
    const turned = simulateTightening({
      ...LARGE,
      passes: relabelled(passes, (bolt) => ((bolt + 4) % 24) + 1),
      record: 'none',
    }).loads_percent;
    plain.forEach((load, i) => {
      expect(turned[(i + 5) % 24]).toBeCloseTo(load, 4);
    });
  });

  it('mirroring the sequence mirrors the loads', () => {
    const mirrored = simulateTightening({
      ...LARGE,
      passes: relabelled(passes, (bolt) => 25 - bolt),
      record: 'none',
    }).loads_percent;
    plain.forEach((load, i) => {
      expect(mirrored[23 - i]).toBeCloseTo(load, 4);
    });
  });

  it('tightening all bolts at once ends uniform, flat and at target', () => {
    const all = Array.from({ length: 24 }, (_, i) => i + 1);
    const { final, parallelism_mm, gasket } = simulateTightening({ ...LARGE, passes: [{ steps: [all] }] });
    expect(final.min).toBeCloseTo(100, 6);
    expect(final.max).toBeCloseTo(100, 6);
    expect(parallelism_mm).toBeLessThan(1e-9);
    // Between the bolts the gasket is pressed a little less than beside them, the same in each field.
    for (let station = 0; station < 4; station++)
      for (let bolt = 1; bolt < 24; bolt++)
        expect(gasket[4 * bolt + station]!.stress_MPa).toBeCloseTo(gasket[station]!.stress_MPa, 6);
  });

  it('the influence of bolt on bolt is mutual (Maxwell, Betti)', () => {
    const linear = { ...joint(12), gasket: { ...joint(12).gasket, curve: bondedGasket(400) } };
    const base = new JointState(jointModel(linear), 1e5);
    const all = Array.from({ length: 12 }, (_, bolt) => bolt);
    base.tighten(
      all,
      all.map(() => 1e5),
    );
    const influence = (moved: number, read: number) => {
      const state = base.clone();
      state.place([moved], [state.takeUp[moved]! + 0.01]);
      state.correct();
      return state.loads[read]! - base.loads[read]!;
    };
    for (const [i, j] of [
      [0, 1],
      [2, 9],
      [11, 5],
    ] as const)
      expect(influence(i, j) / influence(j, i)).toBeCloseTo(1, 6);
  });
});

describe('limits', () => {
  it('a very stiff flange stays plane', () => {
    const stiff = joint(12, 1e-4);
    const model = jointModel(stiff);
    const state = new JointState(model, 1e5);
    state.tighten([0], [1e5]);
    state.tighten([4], [1e5]);
    // A plane is a mean and one harmonic; what is left of the edge closure is the flange's own bending.
    const { stations } = model;
    const closure = Array.from({ length: stations }, (_, k) => state.closureAt(k, model.edgeLever));
    const mean = closure.reduce((sum, value) => sum + value, 0) / stations;
    const part = (wave: (angle: number) => number) =>
      (2 / stations) * closure.reduce((sum, value, k) => sum + value * wave((2 * Math.PI * k) / stations), 0);
    const [a, b] = [part(Math.cos), part(Math.sin)];
    const tilt = Math.hypot(a, b);
    closure.forEach((value, k) => {
      const angle = (2 * Math.PI * k) / stations;
      expect(Math.abs(value - mean - a * Math.cos(angle) - b * Math.sin(angle))).toBeLessThan(0.01 * tilt);
    });
  });

  it('an initial tilt is closed by tightening, and shows in the gap before it', () => {
    const tilted = { ...MIDDLE.joint, initialTilt: { difference_mm: 0.6, widestAt_deg: 0 } };
    const { steps, parallelism_mm } = simulateTightening({
      joint: tilted,
      target_N: MIDDLE.target_N,
      passes: legacy(12),
    });
    expect(steps[0]!.parallelism_mm).toBeGreaterThan(0.1);
    expect(parallelism_mm).toBeLessThan(0.15);
  });

  it('creep between passes costs load that the next pass makes up', () => {
    const passes = legacy(12);
    const without = simulateTightening({ ...MIDDLE, passes });
    const creeping = simulateTightening({ ...MIDDLE, passes, creep_mm3_per_N: 5e-4 });
    const first = creeping.steps.findIndex((step) => step.pass === 3);
    expect(creeping.steps[first]!.statistics.mean).toBeLessThan(without.steps[first]!.statistics.mean - 1);
    expect(creeping.final.mean).toBeGreaterThan(80);
  });

  it('two radial gasket points and twice the stations change no load by more than two points', () => {
    const passes = legacy(24);
    const [coarse, usual, fine] = [2, 4, 8].map(
      (stationsPerBolt) =>
        simulateTightening({ ...LARGE, passes, record: 'none', choices: { stationsPerBolt } }).loads_percent,
    );
    const apart = (a: readonly number[], b: readonly number[]) =>
      Math.max(...a.map((load, bolt) => Math.abs(load - b[bolt]!)));
    expect(apart(usual!, fine!)).toBeLessThan(1);
    expect(apart(usual!, fine!)).toBeLessThan(apart(coarse!, fine!));
  });
});
