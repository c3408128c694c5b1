import { describe, expect, it } from 'vitest';
import {
  findFlange,
  simulateTightening,
  standardJoint,
  type TargetAnswer,
  threadGeometry,
  toolCap,
  windowCap,
} from '../../src/index.ts';
import { MIDDLE } from './support/joints.ts';

const refusedAt = (limit: number) => expect.objectContaining({ errors: [expect.objectContaining({ limit })] });

describe('the cap of a step', () => {
  const base = { thread: '1 1/2-8 UN', utilisation: 0.9, threadFriction: 0.14, yield_MPa: 720 };

  it('leaves room for what the tool may give more than it was set to', () => {
    const certain = toolCap({ ...base, scatter_percent: 0 }).cap_N;
    expect(toolCap({ ...base, scatter_percent: 25 }).cap_N).toBeCloseTo(certain / 1.25, 6);
    const flange = toolCap({ ...base, scatter_percent: 25, flangeLimit_N: 200_000 });
    expect(flange).toEqual({ cap_N: 160_000, governedBy: 'flange' });
  });

  const answer = (limits: readonly { share: number; scatterIncluded?: boolean; advisory?: boolean }[]) =>
    ({
      target: { boltStress_MPa: 300, boltLoad_N: 100_000 },
      spread: { high_MPa: 345 },
      window: {
        upper: limits.map(({ share, ...more }, at) => ({ name: `limit ${at}`, boltStress_MPa: 300 * share, ...more })),
      },
    }) as unknown as Pick<TargetAnswer, 'window' | 'target' | 'spread'>;

  it('of a window is its least limit, lowered by the scatter where that is not in it already', () => {
    const least = windowCap(answer([{ share: 1.5 }, { share: 1.4, scatterIncluded: true }]));
    // 1.5 / 1.15 = 1.3043 is below 1.4.
    expect(least.governedBy).toBe('limit 0');
    expect(least.cap_N).toBeCloseTo(130_434.783, 2);
    expect(least.percent).toBeCloseTo(130.4348, 3);
    expect(
      windowCap(
        answer([
          { share: 1.4, scatterIncluded: true },
          { share: 1.1, advisory: true },
        ]),
      ).percent,
    ).toBeCloseTo(140, 9);
  });

  it('of a wide window stays at 1.6 of target', () => {
    expect(windowCap(answer([{ share: 9 }]))).toEqual({ cap_N: 160_000, percent: 160, governedBy: 'most' });
  });
});

describe('a sequence', () => {
  const simulate = (steps: number, percent?: number) => () =>
    simulateTightening({
      ...MIDDLE,
      record: 'none',
      passes: [{ ...(percent === undefined ? {} : { percent }), steps: Array.from({ length: steps }, () => [1]) }],
    });

  it('has twenty thousand steps at most', () => {
    expect(simulate(20_000)).not.toThrow();
    expect(simulate(20_001)).toThrow(refusedAt(20_000));
  });

  it('loads no bolt beyond three times the target, and to the target where nothing is said', () => {
    expect(simulate(1, 300)).not.toThrow();
    expect(simulate(1, 300.1)).toThrow(refusedAt(300));
    expect(simulate(1)().loads_percent[0]).toBeCloseTo(100, 6);
  });
});

describe('a standard joint', () => {
  // The length that the rings were fitted with, README: both flanges, 3.2 mm of gasket, one diameter.
  it('has bolts of two flange thicknesses, the compressed gasket and one diameter', () => {
    const key = { standard: 'ASME-B16.5', size: 'NPS6', rating: '300' };
    const { joint } = standardJoint({ ...key, kind: 'weld-neck-pair', gasket: { family: 'spiral-wound' } });
    const { thickness_mm, boltThread } = findFlange(key);
    const { nominalDiameter_mm } = threadGeometry({ thread: boltThread });
    expect(joint.boltLength_mm).toBeCloseTo(2 * thickness_mm + 3.2 + nominalDiameter_mm, 9);
  });
});
