import type { JointRow } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { listRows, withoutMake } from './list-rows.ts';
import { selectedNow, tickedTo } from './selection.ts';

const row = (jointId: string, over: Partial<JointRow> = {}) =>
  ({
    jointId,
    makeId: `make of ${jointId}`,
    version: 1,
    tag: jointId,
    crew: null,
    plannedOn: null,
    ...over,
  }) as JointRow;

describe('the ticked joints', () => {
  test('keep what is known of them when their page is gone', () => {
    const first = tickedTo(new Set(['a']), new Map(), [row('a')]);
    const second = tickedTo(new Set(['a', 'b']), first, [row('b')]);
    expect([...second.keys()]).toEqual(['a', 'b']);
    expect(tickedTo(new Set(['b']), second, [row('b')]).has('a')).toBe(false);
  });

  test('go out with the version that is shown now', () => {
    const ticked = tickedTo(new Set(['a']), new Map(), [row('a')]);
    expect(selectedNow(ticked, [row('a', { version: 7 })])[0]?.version).toBe(7);
  });

  test('a joint without a make is counted and left out', () => {
    const joints = selectedNow(tickedTo(new Set(['a', 'b']), new Map(), [row('a'), row('b', { makeId: null })]), []);
    expect(withoutMake(joints)).toBe(1);
    expect(listRows(joints, { reason: 'x' })).toHaveLength(1);
  });
});
