import type { QuantityName } from '@seatwell/contract';
import { createContext, type ReactNode, useContext } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { type Option, Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './calculator.module.css';
import { asInput, type InputName, type Inputs, numberIn } from './inputs.ts';

interface Entering {
  readonly inputs: Inputs;
  readonly change: (change: Readonly<Partial<Record<InputName, string>>>) => void;
}

const EnteringContext = createContext<Entering | null>(null);

/** Gives inputs and the way to change them to the fields below. */
export function EnteringProvider({ value, children }: { value: Entering; children: ReactNode }) {
  return <EnteringContext value={value}>{children}</EnteringContext>;
}

export function useEntering(): Entering {
  const entering = useContext(EnteringContext);
  if (!entering) throw new Error('useEntering needs an EnteringProvider above it.');
  return entering;
}

interface FieldOf {
  readonly name: InputName;
  readonly optional?: boolean;
  readonly hint?: string | undefined;
}

/** A number in the person's unit, held in the API's. */
export function QuantityInput({ name, quantity, ...field }: FieldOf & { quantity: QuantityName }) {
  const text = useText('calculator');
  const format = useFormat();
  const { inputs, change } = useEntering();
  const held = numberIn(inputs, name);
  return (
    <NumberField
      {...field}
      label={text(`input-${name}`)}
      unit={format.unit(quantity)}
      // Nine digits: the way there and back through a unit must not change what somebody types.
      value={held === undefined ? undefined : Number(format.toShown(quantity, held).toPrecision(9))}
      onChange={(shown) =>
        change({ [name]: asInput(shown === undefined ? undefined : format.toHeld(quantity, shown)) })
      }
    />
  );
}

/** A number without a unit that people choose: a factor, a count, a percentage. */
export function PlainInput({ name, unit, ...field }: FieldOf & { unit?: string }) {
  const text = useText('calculator');
  const { inputs, change } = useEntering();
  return (
    <NumberField
      {...field}
      {...(unit === undefined ? {} : { unit })}
      label={text(`input-${name}`)}
      value={numberIn(inputs, name)}
      onChange={(value) => change({ [name]: asInput(value) })}
    />
  );
}

export function TextInput({ name, ...field }: FieldOf) {
  const text = useText('calculator');
  const { inputs, change } = useEntering();
  return (
    <TextField
      {...field}
      label={text(`input-${name}`)}
      value={inputs[name] ?? ''}
      onChange={(value) => change({ [name]: value })}
    />
  );
}

export function ChoiceInput({ name, options, ...field }: FieldOf & { options: readonly Option[] }) {
  const text = useText('calculator');
  const { inputs, change } = useEntering();
  return (
    <Select
      {...field}
      label={text(`input-${name}`)}
      value={inputs[name] ?? ''}
      onChange={(value) => change({ [name]: value })}
      options={options}
    />
  );
}

/** A choice of two that is made where the address names none: the first. */
export function EitherInput({ name, options }: { name: InputName; options: readonly Option[] }) {
  const text = useText('calculator');
  const { inputs, change } = useEntering();
  return (
    <Select
      label={text(`input-${name}`)}
      value={inputs[name] ?? options[0]?.value ?? ''}
      onChange={(value) => change({ [name]: value })}
      options={options}
    />
  );
}

/** A group of inputs with its name. */
export function InputGroup({ legend, children }: { legend: string; children: ReactNode }) {
  return (
    <fieldset className={styles.group}>
      <legend>{legend}</legend>
      {children}
    </fieldset>
  );
}
