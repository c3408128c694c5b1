import { describe, expect, test } from 'vitest';
import { readPairs } from './calibration-pairs.ts';

const line = (pressure?: number, torque?: number) => ({ pressure, torque });

describe('the chart of a hydraulic wrench', () => {
  test('empty lines are left out', () => {
    expect(readPairs([line(100, 400), line(), line(200, 800)])).toEqual([
      { pressure: 100, torque: 400 },
      { pressure: 200, torque: 800 },
    ]);
    expect(readPairs([line(), line()])).toEqual([]);
  });

  test('a pressure without torque is no pair', () => {
    expect(readPairs([line(100, 400), line(200)])).toBe('half');
  });

  test('one pair alone gives no line between', () => {
    expect(readPairs([line(100, 400)])).toBe('one');
  });

  test('torque that falls with pressure was mistyped', () => {
    expect(readPairs([line(100, 800), line(200, 400)])).toBe('not-rising');
  });
});
