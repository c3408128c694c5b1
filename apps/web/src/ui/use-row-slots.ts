import { useEffect, useReducer, useRef } from 'react';
import { inOrder, nextRowFrame, type RowFrame, type RowRange, type RowSlot } from './row-slots.ts';

interface RowsToShow {
  /** undefined before the table has a height */
  readonly inSight: RowRange | undefined;
  readonly rowCount: number;
  readonly scrolling: boolean;
  readonly focused: number | undefined;
}

/**
 * The row nodes of a long table, drawn frame after frame until all rows around those in sight are there. Nodes move
 * to their place in the order of reading once the table stands still.
 */
export function useRowSlots({ inSight, rowCount, scrolling, focused }: RowsToShow): readonly RowSlot[] {
  const held = useRef<readonly RowSlot[]>([]);
  const [, drawMore] = useReducer((frame: number) => frame + 1, 0);
  const frame: RowFrame = inSight
    ? nextRowFrame(held.current, inSight, rowCount, focused)
    : { slots: held.current, complete: true };
  const slots = scrolling || !frame.complete ? frame.slots : inOrder(frame.slots);
  useEffect(() => {
    held.current = slots;
    if (frame.complete) return;
    const next = requestAnimationFrame(drawMore);
    return () => cancelAnimationFrame(next);
  });
  return slots;
}
