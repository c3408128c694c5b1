import { useId } from 'react';
import styles from './states.module.css';

export interface ProgressBarProps {
  readonly label: string;
  /** formatted, for example "10 of 16 done" */
  readonly valueText: string;
  readonly done: number;
  readonly total: number;
  /** draw one piece per step: the passes of a flange, the pages of a form */
  readonly steps?: number;
}

/** How far something has come, in words and as a bar. */
export function ProgressBar({ label, valueText, done, total, steps = 1 }: ProgressBarProps) {
  const labelId = useId();
  const share = total > 0 ? Math.min(1, Math.max(0, done / total)) : 0;
  return (
    <div
      className={styles.progress}
      role="progressbar"
      aria-labelledby={labelId}
      aria-valuemin={0}
      aria-valuemax={total}
      aria-valuenow={done}
      aria-valuetext={valueText}
    >
      <span id={labelId}>{label}</span>
      <span>{valueText}</span>
      <span className={styles.steps}>
        {Array.from({ length: steps }, (_, step) => step).map((step) => (
          <span key={step} className={styles.track}>
            <span
              className={styles.fill}
              style={{
                display: 'block',
                inlineSize: `${Math.min(1, Math.max(0, share * steps - step)) * 100}%`,
              }}
            />
          </span>
        ))}
      </span>
    </div>
  );
}
