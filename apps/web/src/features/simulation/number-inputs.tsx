import type { QuantityName } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { asInput } from '../calculator/inputs.ts';
import type { SimulationInput, SimulationInputs } from './choices.ts';

interface NumberProps {
  readonly inputs: SimulationInputs;
  readonly change: (change: SimulationInputs) => void;
  readonly name: SimulationInput;
  readonly label: string;
  readonly hint?: string;
}

/** A quantity, held in SI and shown in the units chosen. */
export function Held({ inputs, change, name, quantity, label, hint }: NumberProps & { quantity: QuantityName }) {
  const format = useFormat();
  const held = inputs[name];
  return (
    <NumberField
      label={label}
      hint={hint}
      optional={hint !== undefined}
      unit={format.unit(quantity)}
      value={held === undefined ? undefined : Number(format.toShown(quantity, Number(held)).toPrecision(9))}
      onChange={(shown) =>
        change({ [name]: asInput(shown === undefined ? undefined : format.toHeld(quantity, shown)) })
      }
    />
  );
}

/** A number without a unit that is chosen. */
export function Plain({ inputs, change, name, label, hint, unit }: NumberProps & { unit?: string }) {
  const held = inputs[name];
  return (
    <NumberField
      label={label}
      hint={hint}
      optional
      {...(unit === undefined ? {} : { unit })}
      value={held === undefined ? undefined : Number(held)}
      onChange={(value) => change({ [name]: asInput(value) })}
    />
  );
}
