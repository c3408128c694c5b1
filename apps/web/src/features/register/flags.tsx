import { useTrade } from '../../app/use-trade.ts';
import styles from './register.module.css';

const danger = new Set(['leaking', 'on-hold', 'rejected', 'punch-A']);

/** Flags beside a stage, in words; danger is loud. Part tight is told by the stage itself. */
export function Flags({ flags }: { flags: readonly string[] }) {
  const trade = useTrade();
  const told = flags.filter((flag) => flag !== 'part-tight');
  if (told.length === 0) return null;
  return (
    <span className={styles.flags}>
      {told.map((flag) => (
        <span key={flag} className={styles.flag} data-tone={danger.has(flag) ? 'stop' : 'attention'}>
          {trade.word('flag', flag)}
        </span>
      ))}
    </span>
  );
}
