import { describe, expect, test } from 'vitest';
import { narrowOffset } from './clock-offset.ts';

describe('the offset of the device clock', () => {
  test('one answer bounds it by the round trip and the cut-off second', () => {
    expect(narrowOffset(null, { serverDate_ms: 10_000, sentAt_ms: 9_900, receivedAt_ms: 10_100 })).toEqual({
      least_ms: -100,
      most_ms: 1_100,
    });
  });

  test('a second answer narrows it', () => {
    const first = narrowOffset(null, { serverDate_ms: 10_000, sentAt_ms: 9_900, receivedAt_ms: 10_100 });
    const second = narrowOffset(first, { serverDate_ms: 12_000, sentAt_ms: 11_300, receivedAt_ms: 11_400 });
    expect(second).toEqual({ least_ms: 600, most_ms: 1_100 });
  });

  test('a clock that was set since makes the newest answer count', () => {
    const first = narrowOffset(null, { serverDate_ms: 10_000, sentAt_ms: 9_900, receivedAt_ms: 10_100 });
    expect(narrowOffset(first, { serverDate_ms: 20_000, sentAt_ms: 80_000, receivedAt_ms: 80_050 })).toEqual({
      least_ms: -60_050,
      most_ms: -59_000,
    });
  });
});
