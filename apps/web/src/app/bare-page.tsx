import type { ReactNode } from 'react';
import { useText } from '../texts/text-provider.tsx';
import styles from './shell.module.css';

/** A page before the sign-in: the product's name and one thing to do. */
export function BarePage({ children }: { children: ReactNode }) {
  const text = useText('app');
  return (
    <main id="page" className={styles.bare}>
      <span className={styles.mark}>{text('product')}</span>
      {children}
    </main>
  );
}
