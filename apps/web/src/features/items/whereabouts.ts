import type { ShutdownPayload } from '@seatwell/contract';

export type Whereabouts = ShutdownPayload<'item-moved'>['whereabouts'];

/** Where an item may be, from its line outwards. */
export const WHEREABOUTS = [
  'in-line',
  'at-the-joint',
  'workshop',
  'store',
  'scrapped',
] as const satisfies readonly Whereabouts[];

/** Whether an item must still come back; one that was scrapped is replaced by another. */
export const isAway = (whereabouts: string): boolean => !['in-line', 'scrapped'].includes(whereabouts);
