import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { passesOf, simulateTightening } from '../../src/index.ts';
import { denseSimulation } from './support/dense-reference.ts';
import { anyPasses, joint, LARGE, MIDDLE, standardAt345 } from './support/joints.ts';

const CASES = [
  { name: 'class 300 NPS 6', ...MIDDLE, stationsPerBolt: 4 },
  { name: 'class 150 NPS 8', ...standardAt345('ASME-B16.5', 'NPS8', '150'), stationsPerBolt: 4 },
  {
    name: 'class 900 NPS 2 beyond its gasket curve',
    ...standardAt345('ASME-B16.5', 'NPS2', '900'),
    stationsPerBolt: 4,
  },
  { name: 'class 300 NPS 24', ...LARGE, stationsPerBolt: 2 },
  { name: 'a limp ring of 16 bolts', joint: joint(16, 20), target_N: 120_000, stationsPerBolt: 2 },
];

describe('against the same unknowns solved densely', () => {
  it.each(CASES)('$name ends at the same loads to a millionth of target', (tried) => {
    const passes = passesOf({ pattern: 'legacy' }, tried.joint.boltCount).slice(-2);
    const { loads_percent } = simulateTightening({
      joint: tried.joint,
      target_N: tried.target_N,
      passes,
      choices: { stationsPerBolt: tried.stationsPerBolt },
    });
    const steps = passes.flatMap((pass) =>
      (pass.steps as readonly (readonly number[])[]).map((bolts) => ({
        bolts: bolts.map((bolt) => bolt - 1),
        loads_N: bolts.map(() => ((pass.percent ?? 100) / 100) * tried.target_N),
      })),
    );
    const { loads } = denseSimulation(tried.joint, tried.stationsPerBolt * tried.joint.boltCount, steps);
    let largest = 0;
    loads.forEach((load, bolt) => {
      largest = Math.max(largest, Math.abs(load / tried.target_N - loads_percent[bolt]! / 100));
    });
    expect(largest).toBeLessThan(1e-6);
  });

  it('so do made-up flanges, limp and stiff, in any order, at any loads, with several tools', () => {
    const stationsPerBolt = 4;
    const tightening = fc
      .record({
        boltCount: fc.integer({ min: 4, max: 10 }),
        flexibility: fc.double({ min: -1, max: 1.3, noNaN: true }).map((power) => 10 ** power),
      })
      .chain(({ boltCount, flexibility }) =>
        anyPasses(boltCount).map((passes) => ({ joint: joint(boltCount, flexibility), passes })),
      );
    fc.assert(
      fc.property(tightening, ({ joint: flange, passes }) => {
        const target_N = 120_000;
        const { loads_percent } = simulateTightening({
          joint: flange,
          target_N,
          passes,
          record: 'none',
          choices: { stationsPerBolt },
        });
        const steps = (passes as readonly GivenPass[]).flatMap((pass) =>
          pass.steps.map(({ bolts, load_percent }) => ({
            bolts: bolts.map((bolt) => bolt - 1),
            loads_N: bolts.map(() => (load_percent / 100) * target_N),
          })),
        );
        const { loads } = denseSimulation(flange, stationsPerBolt * flange.boltCount, steps);
        loads.forEach((load, bolt) => {
          expect(Math.abs(load / target_N - loads_percent[bolt]! / 100)).toBeLessThan(1e-6);
        });
      }),
      { numRuns: 12, seed: 11 },
    );
  });
});

/** Every step with its own load, as `anyPasses` draws them. */
interface GivenPass {
  readonly steps: readonly { readonly bolts: readonly number[]; readonly load_percent: number }[];
}
