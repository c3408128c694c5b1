import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inOrder, nextRowFrame, type RowRange, type RowSlot } from './row-slots.ts';

const rowCount = 100_000;
const rowsOf = (slots: readonly RowSlot[]) => slots.map(({ index }) => index);

/** Frames until all is there, as the page draws them while the table stands. */
function settled(held: readonly RowSlot[], inSight: RowRange, focused?: number): readonly RowSlot[] {
  const { slots, complete } = nextRowFrame(held, inSight, rowCount, focused);
  return complete ? inOrder(slots) : settled(slots, inSight, focused);
}

describe('the row nodes of a long table', () => {
  const top = settled([], { first: 0, last: 15 });

  test('are the rows in sight and twelve around them, in order', () => {
    expect(rowsOf(top)).toEqual(Array.from({ length: 28 }, (_, index) => index));
    expect(rowsOf(settled(top, { first: 500, last: 515 }))).toEqual(Array.from({ length: 40 }, (_, row) => 488 + row));
  });

  test('show what is in sight in the first frame, and four more rows in each that follows', () => {
    const first = nextRowFrame(top, { first: 24, last: 39 }, rowCount, undefined);
    expect(rowsOf(first.slots)).toEqual(expect.arrayContaining(Array.from({ length: 16 }, (_, index) => 24 + index)));
    expect(first.complete).toBe(false);
    const there = new Set(rowsOf(first.slots));
    const second = nextRowFrame(first.slots, { first: 24, last: 39 }, rowCount, undefined);
    expect(rowsOf(second.slots).filter((index) => !there.has(index))).toHaveLength(4);
  });

  test('are the same nodes for other rows, and stand in order again when all is there', () => {
    const scrolled = nextRowFrame(top, { first: 1, last: 16 }, rowCount, undefined);
    // Nothing is done with yet: the row that comes in gets a node of its own.
    expect(scrolled.slots.slice(0, 28)).toEqual(top);
    const far = settled(top, { first: 5000, last: 5015 });
    const further = nextRowFrame(far, { first: 5002, last: 5017 }, rowCount, undefined).slots;
    expect(further.map(({ key }) => key)).toEqual(far.map(({ key }) => key));
    expect(rowsOf(further).slice(0, 3)).toEqual([5028, 5029, 4990]);
    expect(rowsOf(inOrder(further))).toEqual(Array.from({ length: 40 }, (_, row) => 4990 + row));
  });

  test('keep the row that has the focus, wherever the table is', () => {
    const node = top.find(({ index }) => index === 3);
    const away = settled(top, { first: 9000, last: 9015 }, 3);
    expect(away[0]).toEqual(node);
    expect(away).toHaveLength(41);
    expect(rowsOf(settled(away, { first: 9000, last: 9015 }))[0]).toBe(8988);
  });

  test('hold no row of a longer list than there is now', () => {
    const short = nextRowFrame(settled([], { first: 9000, last: 9015 }), { first: 0, last: 4 }, 5, 9003);
    expect(rowsOf(inOrder(short.slots))).toEqual([0, 1, 2, 3, 4]);
  });

  test('are each of one key and one row, hold all in sight, and stay few, however somebody scrolls', () => {
    const jump = fc.record({
      first: fc.nat(2000),
      high: fc.integer({ min: 1, max: 30 }),
      focus: fc.option(fc.nat(2000)),
    });
    fc.assert(
      fc.property(
        fc.array(jump, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 1, max: 2000 }),
        (jumps, count) => {
          let held: readonly RowSlot[] = [];
          for (const { first, high, focus } of jumps) {
            const inSight = { first: Math.min(first, count - 1), last: Math.min(first + high, count - 1) };
            const before = held.length;
            held = nextRowFrame(held, inSight, count, focus ?? undefined).slots;
            expect(new Set(held.map(({ key }) => key)).size).toBe(held.length);
            expect(new Set(rowsOf(held)).size).toBe(held.length);
            expect(Math.max(...rowsOf(held))).toBeLessThan(count);
            for (let row = inSight.first; row <= inSight.last; row += 1) expect(rowsOf(held)).toContain(row);
            expect(held.length).toBeLessThanOrEqual(Math.max(before, high + 26));
          }
        },
      ),
    );
  });
});
