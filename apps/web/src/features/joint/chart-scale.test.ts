import { describe, expect, test } from 'vitest';
import { chartScale } from './chart-scale.ts';

describe('the axis of the target chart', () => {
  test('ends at a round number above every limit', () => {
    const scale = chartScale([118, 164, 402, 455], 500);
    expect(scale.ticks).toEqual([0, 100, 200, 300, 400, 500]);
    expect(scale.at(250)).toBe(250);
  });

  test('ksi values get a finer step', () => {
    expect(chartScale([17, 24, 58, 66], 500).ticks).toEqual([0, 20, 40, 60, 80]);
  });
});
