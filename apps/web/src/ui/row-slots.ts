export interface RowRange {
  readonly first: number;
  readonly last: number;
}

/** A row node of the page, and which row it shows. Nodes keep their keys while they show one row after another. */
export interface RowSlot {
  readonly key: number;
  readonly index: number;
}

export interface RowFrame {
  /** in the order of the nodes in the page */
  readonly slots: readonly RowSlot[];
  /** all rows around those in sight are there */
  readonly complete: boolean;
}

/** Rows beyond each edge that wait in the page, so that a turn of the wheel finds them there. */
const rowsAround = 12;
/** Rows beyond the edges that one frame adds. */
const rowsInAFrame = 4;

/**
 * What the row nodes show in the next frame: every row in sight, those around that are there already, and a few more
 * of them, the nearest first, since a frame that drew all at once would take twice as long. A node that is needed no
 * more shows another row: that is half the work of making one.
 * @param held what they show now
 * @param focused the row that has the focus: it stays in the page wherever it is, so that the focus is not lost
 */
export function nextRowFrame(
  held: readonly RowSlot[],
  inSight: RowRange,
  rowCount: number,
  focused: number | undefined,
): RowFrame {
  const first = Math.max(0, inSight.first - rowsAround);
  const last = Math.min(rowCount - 1, inSight.last + rowsAround);
  const stays = ({ index }: RowSlot) => (index >= first && index <= last) || (index === focused && index < rowCount);
  const there = new Set(held.filter(stays).map(({ index }) => index));
  const distance = (row: number) => Math.max(inSight.first - row, row - inSight.last);
  const missing: number[] = [];
  for (let row = first; row <= last; row += 1) if (!there.has(row)) missing.push(row);
  const around = missing.filter((row) => distance(row) > 0).sort((a, b) => distance(a) - distance(b));
  const added = [...missing.filter((row) => distance(row) <= 0), ...around.slice(0, rowsInAFrame)];
  const complete = around.length <= rowsInAFrame;

  const slots = held.flatMap((slot): RowSlot[] => {
    if (stays(slot)) return [slot];
    const index = added.shift();
    if (index !== undefined) return [{ key: slot.key, index }];
    // The next frame will need it.
    return complete || slot.index >= rowCount ? [] : [slot];
  });
  const newest = held.reduce((key, slot) => Math.max(key, slot.key), 0);
  return { slots: [...slots, ...added.map((index, more) => ({ key: newest + 1 + more, index }))], complete };
}

/** The slots in the order of their rows, as they are read aloud. */
export const inOrder = (slots: readonly RowSlot[]): readonly RowSlot[] =>
  slots.every((slot, at) => at === 0 || slot.index > (slots[at - 1]?.index ?? -1))
    ? slots
    : [...slots].sort((a, b) => a.index - b.index);
