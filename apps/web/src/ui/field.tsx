import { type ReactNode, useId } from 'react';
import { useText } from '../texts/text-provider.tsx';
import styles from './field.module.css';

/** What every field has: a label that stays, a hint, an error that says what to do. */
export interface FieldProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly optional?: boolean;
  readonly disabled?: boolean;
}

export interface ControlProps {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': true | undefined;
  readonly disabled: boolean | undefined;
}

/** Draws label, control, hint and error, and ties them together for assistive technology. */
export function Field(props: FieldProps & { children: (control: ControlProps) => ReactNode }) {
  const text = useText('ui');
  const id = useId();
  const hintId = `${id}-hint`;
  const errorId = `${id}-error`;
  const describedBy = [props.error && errorId, props.hint && hintId].filter(Boolean).join(' ');
  return (
    <div className={styles.field}>
      <label className={styles.label} htmlFor={id}>
        {props.label}
        {props.optional && <span className={styles.optional}> · {text('optional')}</span>}
      </label>
      {props.children({
        id,
        'aria-describedby': describedBy === '' ? undefined : describedBy,
        'aria-invalid': props.error ? true : undefined,
        disabled: props.disabled,
      })}
      {props.error && (
        <p id={errorId} className={styles.error} role="alert">
          {props.error}
        </p>
      )}
      {props.hint && (
        <p id={hintId} className={styles.hint}>
          {props.hint}
        </p>
      )}
    </div>
  );
}

/** The frame around a control: carries focus ring, error and disabled state. */
export function ControlBox(props: { invalid: boolean; disabled: boolean | undefined; children: ReactNode }) {
  return (
    <div
      className={styles.box}
      data-invalid={props.invalid ? '' : undefined}
      data-disabled={props.disabled ? '' : undefined}
    >
      {props.children}
    </div>
  );
}
