import { useText } from '../texts/text-provider.tsx';
import { classNames } from './class-names.ts';
import styles from './field.module.css';
import { ControlBox, Field, type FieldProps } from './field.tsx';

export interface Option<Value extends string = string> {
  readonly value: Value;
  readonly label: string;
  readonly detail?: string;
  /** why it cannot be chosen; it stays in the list */
  readonly disabledReason?: string | undefined;
}

export interface SelectProps<Value extends string> extends FieldProps {
  readonly value: Value | '';
  readonly onChange: (value: Value) => void;
  readonly options: readonly Option<Value>[];
}

/** A choice from a short list, with the device's own picker: it works with gloves and screen readers. */
export function Select<Value extends string>({ value, onChange, options, ...field }: SelectProps<Value>) {
  const text = useText('ui');
  const choose = (chosen: string) => {
    const option = options.find((each) => each.value === chosen);
    if (option) onChange(option.value);
  };
  return (
    <Field {...field}>
      {(control) => (
        <ControlBox invalid={Boolean(field.error)} disabled={field.disabled}>
          <span className={classNames(styles.select, styles.input)} style={{ padding: 0 }}>
            <select
              {...control}
              className={styles.input}
              style={{ blockSize: '100%' }}
              value={value}
              onChange={(event) => choose(event.target.value)}
            >
              {value === '' && (
                <option value="" disabled>
                  {text('not-chosen')}
                </option>
              )}
              {options.map((option) => (
                <option key={option.value} value={option.value} disabled={option.disabledReason !== undefined}>
                  {[option.label, option.detail, option.disabledReason].filter(Boolean).join(' · ')}
                </option>
              ))}
            </select>
            <span className={styles.arrow} aria-hidden="true">
              ▾
            </span>
          </span>
        </ControlBox>
      )}
    </Field>
  );
}
