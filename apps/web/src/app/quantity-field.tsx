import type { QuantityName } from '@seatwell/contract';
import { useFormat } from '../format/format-provider.tsx';
import type { FieldProps } from '../ui/field.tsx';
import { NumberField } from '../ui/number-field.tsx';

interface Props extends FieldProps {
  readonly quantity: QuantityName;
  /** in the API's unit */
  readonly value: number | null | undefined;
  readonly onChange: (value: number | undefined) => void;
}

/** A quantity in the person's unit, held in the API's. */
export function QuantityField({ quantity, value, onChange, ...field }: Props) {
  const format = useFormat();
  return (
    <NumberField
      {...field}
      unit={format.unit(quantity)}
      // Nine digits: the way there and back through a unit must not change what somebody types.
      value={value === null || value === undefined ? undefined : Number(format.toShown(quantity, value).toPrecision(9))}
      onChange={(shown) => onChange(shown === undefined ? undefined : format.toHeld(quantity, shown))}
    />
  );
}
