import type { ToolSetting } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import styles from './tightening.module.css';

/** The number that is set, as it stands on the dial. */
export function useDial(): (set: ToolSetting) => { number: string; unit: string } {
  const format = useFormat();
  return ({ asEntered }) => {
    const decimals = Math.min(4, (String(asEntered.value).split('.')[1] ?? '').length);
    return { number: format.number(asEntered.value, decimals), unit: asEntered.unit };
  };
}

/** The set value, readable from arm's length. */
export function SetValue({ set }: { set: ToolSetting }) {
  const dial = useDial()(set);
  return (
    <p className={styles.value}>
      <span className={styles.number}>{dial.number}</span>
      <span className={styles.unit}>{dial.unit}</span>
    </p>
  );
}

/** The few values of a pass with computed loads or by the groups of a tensioner, the highest first as most begin. */
export function SetValues({ sets, byGroups }: { sets: readonly ToolSetting[]; byGroups: boolean }) {
  const text = useText('tightening');
  const format = useFormat();
  const dial = useDial();
  const shown = [...sets].reverse().map(dial);
  return (
    <section className={styles.values} aria-label={text('set-values')}>
      <h2>{text('set-values')}</h2>
      <ul>
        {shown.map(({ number, unit }) => (
          <li key={number}>{`${number} ${unit}`}</li>
        ))}
      </ul>
      <p className={styles.soft}>
        {text(byGroups ? 'set-values-by-groups' : 'set-values-detail', { count: format.count(sets.length) })}
      </p>
    </section>
  );
}
