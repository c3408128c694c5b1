import { useText } from '../texts/text-provider.tsx';
import styles from './states.module.css';
import { VisuallyHidden } from './visually-hidden.tsx';

/** Holds the place of lines that are on their way. */
export function Skeleton({ lines = 3 }: { lines?: number }) {
  const text = useText('ui');
  return (
    <div className={styles.skeleton} role="status">
      <VisuallyHidden>{text('loading')}</VisuallyHidden>
      {Array.from({ length: lines }, (_, line) => line).map((line) => (
        <div key={line} className={styles.line} aria-hidden="true" />
      ))}
    </div>
  );
}
