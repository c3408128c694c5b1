import { useId } from 'react';
import styles from './checkbox.module.css';
import type { Option } from './select.tsx';

export interface RadioCardsProps<Value extends string> {
  readonly label: string;
  readonly value: Value | '';
  readonly onChange: (value: Value) => void;
  readonly options: readonly Option<Value>[];
  readonly error?: string | undefined;
}

/** A choice among few, each with a line of explanation. */
export function RadioCards<Value extends string>(props: RadioCardsProps<Value>) {
  const id = useId();
  return (
    <fieldset className={styles.cards} aria-describedby={props.error ? `${id}-error` : undefined}>
      <legend className={styles.legend}>{props.label}</legend>
      <div className={styles.grid}>
        {props.options.map((option) => {
          const disabled = option.disabledReason !== undefined;
          const more = option.disabledReason ?? option.detail;
          const detailId = `${id}-${option.value}`;
          return (
            <label key={option.value} className={styles.card} data-disabled={disabled ? '' : undefined}>
              <input
                type="radio"
                className={styles.box}
                name={id}
                value={option.value}
                checked={props.value === option.value}
                disabled={disabled}
                aria-describedby={more === undefined ? undefined : detailId}
                onChange={() => props.onChange(option.value)}
              />
              <span className={styles.words}>
                <strong>{option.label}</strong>
                {more !== undefined && (
                  <span id={detailId} className={styles.detail}>
                    {more}
                  </span>
                )}
              </span>
            </label>
          );
        })}
      </div>
      {props.error && (
        <p id={`${id}-error`} className={styles.error} role="alert">
          {props.error}
        </p>
      )}
    </fieldset>
  );
}
