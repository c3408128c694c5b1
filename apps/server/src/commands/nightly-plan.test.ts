import { describe, expect, it } from 'vitest';
import { beyondKept, nextRun } from './nightly-plan.ts';

describe('the nightly backup', () => {
  it.each([
    ['2026-11-25T01:59:59Z', '02:00', '2026-11-25T02:00:00.000Z'],
    ['2026-11-25T02:00:00Z', '02:00', '2026-11-26T02:00:00.000Z'],
    ['2026-12-31T23:40:00Z', '23:30', '2027-01-01T23:30:00.000Z'],
  ])('after %s is at %s next on %s', (now, at, next) => {
    expect(nextRun(new Date(now), at).toISOString()).toBe(next);
  });

  it('keeps the newest and touches nothing that it has not written', () => {
    const nights = ['20261123', '20261124', '20261125'].map((day) => `seatwell-${day}T020000000Z.backup`);
    const names = ['before-the-move.backup', nights[2], nights[0], 'notes.txt', nights[1]] as string[];
    expect(beyondKept(names, 2)).toEqual([nights[0]]);
    expect(beyondKept(names, 3)).toEqual([]);
    expect(beyondKept(names, 1)).toEqual([nights[1], nights[0]]);
  });
});
