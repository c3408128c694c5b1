import styles from './field.module.css';
import { ControlBox, Field, type FieldProps } from './field.tsx';

export interface DateFieldProps extends FieldProps {
  /** ISO text as the platform's field gives it: `2027-03-09`, `2027-03-09T05:52` or `05:52`; empty when unset */
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly kind?: 'date' | 'datetime-local' | 'time';
  readonly earliest?: string;
  readonly latest?: string;
}

/** A date or time, with the device's own picker. The time is the site's: the caller converts. */
export function DateField({ value, onChange, kind = 'date', earliest, latest, ...field }: DateFieldProps) {
  return (
    <Field {...field}>
      {(control) => (
        <ControlBox invalid={Boolean(field.error)} disabled={field.disabled}>
          <input
            {...control}
            className={styles.input}
            type={kind}
            value={value}
            min={earliest}
            max={latest}
            onChange={(event) => onChange(event.target.value)}
          />
        </ControlBox>
      )}
    </Field>
  );
}
