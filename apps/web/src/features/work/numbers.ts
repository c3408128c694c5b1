import type { QuantityName } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import type { Formatter } from '../../format/formatter.ts';

/** A reading in the person's unit for a field, and back into the API's unit. */
export function useReading(quantity: QuantityName) {
  const format = useFormat();
  return {
    unit: format.unit(quantity),
    shown: (held: number | null | undefined) =>
      held === null || held === undefined ? undefined : round(held, quantity, format),
    held: (shown: number | undefined): number | null => (shown === undefined ? null : format.toHeld(quantity, shown)),
    limit: (held: number) => format.quantity(quantity, held),
  };
}

// Back and forth between units leaves crumbs in the last digits, which nobody typed.
const round = (held: number, quantity: QuantityName, format: Formatter) =>
  Number(format.toShown(quantity, held).toPrecision(9));
