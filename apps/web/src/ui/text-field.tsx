import styles from './field.module.css';
import { ControlBox, Field, type FieldProps } from './field.tsx';

export interface TextFieldProps extends FieldProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly type?: 'text' | 'email' | 'password' | 'search' | 'tel';
  readonly autoComplete?: string;
  readonly lines?: number;
  readonly name?: string;
}

/** One line of text, or several with `lines`. */
export function TextField({ value, onChange, type = 'text', lines, ...field }: TextFieldProps) {
  return (
    <Field {...field}>
      {(control) => (
        <ControlBox invalid={Boolean(field.error)} disabled={field.disabled}>
          {lines === undefined ? (
            <input
              {...control}
              className={styles.input}
              type={type}
              name={field.name}
              value={value}
              autoComplete={field.autoComplete ?? 'off'}
              onChange={(event) => onChange(event.target.value)}
            />
          ) : (
            <textarea
              {...control}
              className={styles.input}
              rows={lines}
              name={field.name}
              value={value}
              onChange={(event) => onChange(event.target.value)}
            />
          )}
        </ControlBox>
      )}
    </Field>
  );
}
