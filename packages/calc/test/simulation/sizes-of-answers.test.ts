import { describe, expect, it } from 'vitest';
import { findRing, interactionOf, listRings, passesNeeded, passesOf, standardJoint } from '../../src/index.ts';
import { clockwiseRound } from '../../src/simulation/sequence-steps.ts';
import { simulateTightening } from '../../src/simulation/simulate.ts';
import { bondedGasket, LARGE, standardAt345 } from './support/joints.ts';

// Cross pattern at 30, 70 and 100 % and one clockwise round, 345 MPa on stress area, spiral wound. Answers of an
// earlier trial of ours with the same rings: lowest and mean load in percent, extra rounds to ±10 %.
const SIZES = [
  ['ASME-B16.5', 'NPS8', '150', 96, 101, 0],
  ['ASME-B16.5', 'NPS6', '300', 76, 89, 1],
  ['ASME-B16.5', 'NPS12', '300', 78, 89, 1],
  ['ASME-B16.5', 'NPS24', '300', 60, 78, 3],
  ['ASME-B16.5', 'NPS20', '600', 77, 87, 1],
  ['ASME-B16.5', 'NPS16', '900', 83, 90, 1],
  ['ASME-B16.47-A', 'NPS48', '300', 87, 92, 1],
  ['EN-1092-1', 'DN300', 'PN16', 90, 95, 1],
] as const;

describe('sizes of answers', () => {
  it.each(SIZES)('%s %s %s ends near %i / %i with %i extra rounds', (standard, size, rating, min, mean, rounds) => {
    const { joint, target_N } = standardAt345(standard, size, rating);
    const passes = passesOf({ pattern: 'legacy' }, joint.boltCount);
    const { final } = simulateTightening({ joint, target_N, passes, record: 'none' });
    expect(Math.abs(final.min - min)).toBeLessThan(3);
    expect(Math.abs(final.mean - mean)).toBeLessThan(3);
    expect(passesNeeded({ joint, target_N, passes }, 10).extraRounds).toBe(rounds);
  });

  // Every weld-neck pair of the ring tables with eight bolts and more and a standard spiral-wound gasket.
  describe('over the 298 pairs of the tables', () => {
    const pairs = ['ASME-B16.5', 'ASME-B16.47-A', 'ASME-B16.47-B', 'EN-1092-1'].flatMap((standard) =>
      listRings(standard).flatMap((key) => {
        const row = findRing({ standard, ...key }, key.kind)!;
        if (key.kind !== 'weld-neck-pair' || row.boltCount < 8 || row.note?.includes('flat-ring')) return [];
        const flange = standardAt345(standard, key.size, key.rating, key.kind, row.boltCount);
        const passes = passesOf({ pattern: 'legacy' }, row.boltCount);
        return [{ ...key, standard, ...flange, passes, boltCount: row.boltCount }];
      }),
    );

    it('the lowest loads lie as in the earlier trial: 49, 81 and 92 % (10th, 50th and 90th percentile)', () => {
      const lowest = pairs
        .map((pair) => simulateTightening({ ...pair, record: 'none' }).final.min)
        .sort((a, b) => a - b);
      expect(lowest).toHaveLength(298);
      const at = (share: number) => lowest[Math.round(share * (lowest.length - 1))]!;
      expect(Math.abs(at(0.1) - 49)).toBeLessThan(3);
      expect(Math.abs(at(0.5) - 81)).toBeLessThan(3);
      expect(Math.abs(at(0.9) - 92)).toBeLessThan(3);
    });

    it('only small B16.5 flanges of eight bolts never come within ±10 %: 20 of them, see BASIS.md', () => {
      const never = pairs.filter((pair) => passesNeeded(pair, 10).extraRounds === undefined);
      for (const { standard, size, boltCount } of never) {
        expect(standard).toBe('ASME-B16.5');
        expect(boltCount).toBe(8);
        expect(['NPS2', 'NPS2.5', 'NPS3', 'NPS3.5', 'NPS4', 'NPS5']).toContain(size);
      }
      expect(never).toHaveLength(20);
    });
  });

  it('one clockwise pass alone leaves a minimum near 30 % at 16 bolts and near 0 at 24', () => {
    const sixteen = standardAt345('ASME-B16.5', 'NPS12', '300');
    const lowest = (flange: typeof sixteen) =>
      simulateTightening({ ...flange, passes: [{ steps: clockwiseRound(flange.joint.boltCount) }], record: 'none' })
        .final.min;
    expect(Math.abs(lowest(sixteen) - 30)).toBeLessThan(10);
    expect(lowest(LARGE)).toBeLessThan(10);
  });

  it('the interaction numbers of the ring tables come back with the gasket they were fitted with', () => {
    // The fits took a linear gasket of 500 MPa/mm acting on its mean circle.
    let compared = 0;
    for (const standard of ['ASME-B16.5', 'ASME-B16.47-A', 'ASME-B16.47-B', 'EN-1092-1'])
      for (const key of listRings(standard)) {
        const row = findRing({ standard, ...key }, key.kind)!;
        if (row.boltCount === 4) continue;
        const { joint, tensileArea_mm2 } = standardJoint({
          standard,
          ...key,
          boltCount: row.boltCount,
          gasket: {
            family: 'spiral-wound',
            contactInside_mm: row.gasketInside_mm,
            contactOutside_mm: row.gasketOutside_mm,
          },
        });
        const width = (row.gasketOutside_mm - row.gasketInside_mm) / 2;
        const line = 0.02;
        const middle = (row.gasketOutside_mm + row.gasketInside_mm) / 2;
        const { interaction, influence } = interactionOf(
          {
            ...joint,
            faceCompliance_mm3_per_N: (joint.faceCompliance_mm3_per_N * line) / width,
            gasket: {
              contactInside_mm: middle - line,
              contactOutside_mm: middle + line,
              curve: bondedGasket((500 * width) / line),
            },
          },
          100 * tensileArea_mm2,
        );
        expect(Math.abs(interaction - row.interaction), `S of ${standard} ${key.size} ${key.rating}`).toBeLessThan(
          0.03,
        );
        expect(Math.abs(influence[0]! - row.neighbour), `neighbour of ${key.size} ${key.rating}`).toBeLessThan(0.005);
        compared++;
      }
    expect(compared).toBeGreaterThan(450);
  });
});
