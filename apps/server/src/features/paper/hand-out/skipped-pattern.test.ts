import { describe, expect, test } from 'vitest';
import { procedureOf } from '../../../../../../tests/api/support/sample-sheet.ts';
import { skippedPattern } from './skipped-pattern.ts';
import { skippedPatternSvgs } from './skipped-pattern-svg.ts';

const lowest = (loads: readonly number[] = []) => Math.min(...loads);

describe('the picture of a skipped pattern', () => {
  const picture = skippedPattern(procedureOf(), 16);

  test('is of a flange with the bolts of the talk, and shows what one round leaves behind', () => {
    expect(picture).toMatchObject({ standard: 'ASME-B16.5', rating: '300', boltStress_MPa: 345 });
    expect(picture?.skipped).toHaveLength(16);
    // One clockwise pass alone leaves a lowest load near 30 % at 16 bolts.
    expect(lowest(picture?.skipped)).toBeLessThan(45);
    expect(lowest(picture?.kept)).toBeGreaterThan(lowest(picture?.skipped) + 20);
  });

  test('goes by the rating, gasket and bolt stress of the procedure', () => {
    const { appliesTo, policy } = procedureOf();
    const other = procedureOf({
      appliesTo: { ...appliesTo, ratings: ['600'], gasketFamilies: ['grooved-metal'] },
      policy: { ...policy, targetBoltStress_MPa: 250 },
    });
    expect(skippedPattern(other, 20)).toMatchObject({ rating: '600', family: 'grooved-metal', boltStress_MPa: 250 });
  });

  test('is left out for four bolts and for counts that no flange has', () => {
    expect(skippedPattern(procedureOf(), 4)).toBeNull();
    expect(skippedPattern(procedureOf(), 37)).toBeNull();
  });

  test('is drawn with presentation attributes only, both drawings on one scale', () => {
    const { skipped, kept } = skippedPatternSvgs(picture!, { skipped: 'once', kept: 'kept' });
    for (const svg of [skipped, kept]) {
      expect(svg).not.toMatch(/style=|class=|<style|<script|var\(/);
      expect(svg.match(/<rect/g)).toHaveLength(16);
    }
    const targetLine = (svg: string) => /<line[^>]* y1="([\d.]+)"/.exec(svg)?.[1];
    expect(targetLine(skipped)).toBe(targetLine(kept));
  });
});
