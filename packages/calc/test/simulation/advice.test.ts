import { describe, expect, it } from 'vitest';
import {
  adviseTightening,
  estimatedPasses,
  interactionOf,
  passesNeeded,
  passesOf,
  simulationBand,
  usualChoices,
} from '../../src/index.ts';
import { LARGE, MIDDLE, standardAt345 } from './support/joints.ts';

describe('advice', () => {
  const { patterns, statement } = adviseTightening({ ...LARGE, toolsAtOnce: 4 });

  it('ranks the patterns that meet the limit by moves', () => {
    expect(patterns.length).toBe(usualChoices(24, 4).length);
    for (const pattern of patterns) {
      expect(pattern.meetsLimit).toBe(true);
      expect(pattern.final.min).toBeGreaterThanOrEqual(90);
      expect(pattern.final.max).toBeLessThanOrEqual(110);
    }
    const ranks = patterns.map((pattern) => pattern.rank!);
    expect([...ranks].sort((a, b) => a - b)).toEqual(ranks);
    expect(ranks[0]).toBe(1);
    expect(statement).toContain('band');
  });

  it('gives the same rank where the bands overlap, a worse one only where they do not', () => {
    for (const a of patterns)
      for (const b of patterns) if (a.movesBand!.high < b.movesBand!.low) expect(a.rank!).toBeLessThan(b.rank!);
    const firsts = patterns.filter((pattern) => pattern.rank === 1);
    const lowest = Math.min(...patterns.map((pattern) => pattern.movesBand!.high));
    for (const first of firsts) expect(first.movesBand!.low).toBeLessThanOrEqual(lowest);
  });

  it('several tools keep the flange parallel', () => {
    const tilt = (name: string) => patterns.find(({ choice }) => choice.pattern === name)!.largestParallelism_mm;
    expect(tilt('simultaneous')).toBeLessThan(0.01);
    expect(tilt('circular')).toBeGreaterThan(tilt('legacy'));
  });

  it('gives no number of passes for four bolts, and says why', () => {
    const four = standardAt345('ASME-B16.5', 'NPS1', '300');
    const { patterns: compared } = adviseTightening(four);
    for (const pattern of compared) {
      expect(pattern.rank).toBeUndefined();
      expect(pattern.extraRounds).toBeUndefined();
      expect(pattern.warnings.map((warning) => warning.code)).toContain('four-bolts-not-determined');
    }
  });

  it('says when a bolt stays above because nuts are not backed off', () => {
    const flange = standardAt345('ASME-B16.5', 'NPS3', '600');
    const needed = passesNeeded({ ...flange, passes: passesOf({ pattern: 'legacy' }, 8) }, 10);
    expect(needed.extraRounds).toBeUndefined();
    expect(needed.final.max).toBeGreaterThan(110);
    expect(needed.warnings.map((warning) => warning.code)).toContain('bolt-stays-above-limit');
  });
});

describe('the interaction number', () => {
  it.each([
    ['NPS12', '300'],
    ['NPS24', '300'],
    ['NPS20', '600'],
  ])('estimates how a clockwise round shrinks the shortfall (%s class %s)', (size, rating) => {
    const flange = standardAt345('ASME-B16.5', size, rating);
    const interaction = interactionOf(flange.joint, flange.target_N);
    const passes = passesOf({ pattern: 'legacy' }, flange.joint.boltCount);
    const round = passes.at(-1)!;
    const mean = (extra: number) =>
      passesNeeded({ ...flange, passes: [...passes, ...Array.from({ length: extra }, () => round)] }, 50).final.mean;
    const ratio = (100 - mean(2)) / (100 - mean(1));
    expect(Math.abs(ratio - interaction.shortfallLeft)).toBeLessThan(0.12);
    expect(estimatedPasses(interaction, 100 - mean(0), 5)).toBeGreaterThanOrEqual(1);
  });
});

describe('the band', () => {
  const passes = passesOf({ pattern: 'legacy' }, 12);

  it('holds the answer and widens with tool scatter', () => {
    const gasket = simulationBand({ ...MIDDLE, passes });
    const scattered = simulationBand({ ...MIDDLE, passes }, { scatter_percent: 25, seed: 1 });
    expect(gasket.low.min).toBeLessThan(76.5);
    expect(gasket.high.min).toBeGreaterThan(76.4);
    expect(scattered.low.min).toBeLessThan(gasket.low.min);
    expect(scattered.high.mean).toBeGreaterThanOrEqual(gasket.high.mean);
  });

  it('repeats with its seed and changes with another', () => {
    const band = (seed: number) => simulationBand({ ...MIDDLE, passes }, { scatter_percent: 25, seed });
    expect(band(5)).toEqual(band(5));
    expect(band(5)).not.toEqual(band(6));
  });
});
