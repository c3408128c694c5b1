import { classNames } from './class-names.ts';
import styles from './share-bar.module.css';

const steps = [styles.step1, styles.step2, styles.step3];

interface Props {
  /** up to three parts, from the darkest step of the ramp to the lightest; together at most `total` */
  readonly values: readonly number[];
  readonly total: number;
  /** where it should stand now, in the same unit */
  readonly mark?: number | undefined;
}

/** Shares of a whole as one bar, for the eye: whoever shows it says the figures in words too. */
export function ShareBar({ values, total, mark }: Props) {
  const share = (value: number) => `${total > 0 ? (100 * value) / total : 0}%`;
  return (
    <span className={styles.track} aria-hidden="true">
      {values.map((value, index) => (
        <span
          // biome-ignore lint/suspicious/noArrayIndexKey: the parts have a fixed order and no other name
          key={index}
          className={classNames(styles.part, steps[index])}
          style={{ inlineSize: share(value) }}
        />
      ))}
      {mark !== undefined && <span className={styles.mark} style={{ insetInlineStart: share(mark) }} />}
    </span>
  );
}

/** A part of the bar, or its mark, as a legend shows it. */
export function ShareSwatch({ part }: { part: number | 'mark' }) {
  return <span className={classNames(styles.swatch, part === 'mark' ? styles.mark : steps[part])} />;
}
