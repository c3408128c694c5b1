import { STAGES } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { progressOf } from './progress.ts';

const none = Object.fromEntries(STAGES.map((stage) => [stage, 0])) as Parameters<typeof progressOf>[0];

describe('progress in three steps', () => {
  test('a part-tight flange is begun and not tight', () => {
    expect(progressOf({ ...none, 'nipped-up': 3, 'part-tight': 2, tight: 4 })).toEqual({
      begun: 5,
      tight: 4,
      checked: 0,
    });
  });

  test('what is proven or handed over was checked', () => {
    expect(progressOf({ ...none, checked: 1, proven: 2, 'handed-over': 4 }).checked).toBe(7);
  });

  test('each joint counts once at most', () => {
    const one = Object.fromEntries(STAGES.map((stage) => [stage, 1])) as typeof none;
    const { begun, tight, checked } = progressOf(one);
    expect(begun + tight + checked).toBe(6);
  });
});
