import { useId } from 'react';
import styles from './checkbox.module.css';

export interface CheckboxProps {
  readonly label: string;
  readonly detail?: string | undefined;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly disabledReason?: string | undefined;
}

/** A box to tick; the whole line is its target. */
export function Checkbox({ label, detail, checked, onChange, disabledReason }: CheckboxProps) {
  const detailId = useId();
  const more = disabledReason ?? detail;
  return (
    <label className={styles.row} data-disabled={disabledReason === undefined ? undefined : ''}>
      <input
        type="checkbox"
        className={styles.box}
        checked={checked}
        disabled={disabledReason !== undefined}
        aria-describedby={more === undefined ? undefined : detailId}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span className={styles.words}>
        {label}
        {more !== undefined && (
          <span id={detailId} className={styles.detail}>
            {more}
          </span>
        )}
      </span>
    </label>
  );
}
