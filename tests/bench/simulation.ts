import { CalcRefusal, passesOf, type SimulationJoint, simulateTightening, type TighteningPass } from '@seatwell/calc';
import fc from 'fast-check';
import { denseSimulation } from '../../packages/calc/test/simulation/support/dense-reference.ts';
import { anyTightening, joint } from '../../packages/calc/test/simulation/support/joints.ts';

const BOLTS = [8, 16, 24, 40, 64, 96, 120];
/** Beyond this the dense solution takes minutes. */
const MOST_DENSE_BOLTS = 24;
const TARGET_N = 200_000;
const RANDOM_JOINTS = 10_000;

/** The cross pattern at 30, 70 and 100 % and a clockwise round. */
const fourPasses = (boltCount: number) => passesOf({ pattern: 'legacy' }, boltCount);

/** Shortest of several runs, ms: the others were interrupted. */
function shortest(run: () => unknown, least_ms: number): number {
  let best = Infinity;
  const begin = performance.now();
  for (let runs = 0; runs < 5 || performance.now() - begin < least_ms; runs++) {
    const start = performance.now();
    run();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

function denseTime(flange: SimulationJoint, stations: number, passes: readonly TighteningPass[]) {
  const steps = passes.flatMap(({ percent = 100, steps: all }) =>
    (all as readonly (readonly number[])[]).map((bolts) => ({
      bolts: bolts.map((bolt) => bolt - 1),
      loads_N: bolts.map(() => (percent / 100) * TARGET_N),
    })),
  );
  const start = performance.now();
  const { loads, factorisations } = denseSimulation(flange, stations, steps);
  return { ms: performance.now() - start, loads, factorisations };
}

/** Random joints and sequences, well beyond real proportions: how many find no equilibrium or no number? */
function convergence() {
  let failures = 0;
  let steps = 0;
  for (const request of fc.sample(anyTightening, { numRuns: RANDOM_JOINTS, seed: 1 })) {
    try {
      const { final } = simulateTightening({ ...request, record: 'none' });
      if (!Number.isFinite(final.min + final.max + final.mean)) failures++;
    } catch (error) {
      if (!(error instanceof CalcRefusal)) throw error;
      failures++;
    }
    steps += request.passes.reduce((sum, pass) => sum + pass.steps.length, 0);
  }
  return { joints: RANDOM_JOINTS, steps, failures };
}

/**
 * Times of the simulation for four passes by number of bolts, its growth, and its ratio to a dense solution by a
 * general linear algebra library of the same unknowns with one factorisation per active set, in the same run;
 * and the failures over 10,000 random joints.
 */
export async function bench(): Promise<object> {
  const times = BOLTS.map((boltCount) => {
    const request = { joint: joint(boltCount), target_N: TARGET_N, passes: fourPasses(boltCount) };
    const loadsOnly_ms = shortest(() => simulateTightening({ ...request, record: 'none' }), 300);
    const everyStep_ms = shortest(() => simulateTightening(request), 300);
    return { boltCount, loadsOnly_ms, everyStep_ms };
  });
  const logs = times.map(({ boltCount, loadsOnly_ms }) => [Math.log(boltCount), Math.log(loadsOnly_ms)] as const);
  const mean = (which: 0 | 1) => logs.reduce((sum, log) => sum + log[which], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  const growthExponent =
    logs.reduce((sum, log) => sum + (log[0] - x) * (log[1] - y), 0) /
    logs.reduce((sum, log) => sum + (log[0] - x) ** 2, 0);
  const dense = BOLTS.filter((boltCount) => boltCount <= MOST_DENSE_BOLTS).map((boltCount) => {
    const flange = joint(boltCount);
    const passes = fourPasses(boltCount);
    const stationsPerBolt = 4;
    const choices = { stationsPerBolt };
    const request = { joint: flange, target_N: TARGET_N, passes, record: 'none' as const, choices };
    const ours_ms = shortest(() => simulateTightening(request), 200);
    const { loads_percent } = simulateTightening(request);
    const { ms, loads, factorisations } = denseTime(flange, stationsPerBolt * boltCount, passes);
    const largest = loads.reduce(
      (most, load, bolt) => Math.max(most, Math.abs(load / TARGET_N - loads_percent[bolt]! / 100)),
      0,
    );
    return { boltCount, ours_ms, dense_ms: ms, ratio: ms / ours_ms, factorisations, largestDifference: largest };
  });
  const six = { joint: joint(48), target_N: TARGET_N, passes: fourPasses(48), record: 'none' as const };
  const sixPatterns48Bolts_ms = shortest(() => {
    for (let pattern = 0; pattern < 6; pattern++) simulateTightening(six);
  }, 300);
  return { passes: 4, times, growthExponent, dense, sixPatterns48Bolts_ms, convergence: convergence() };
}
