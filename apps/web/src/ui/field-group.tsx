import type { ReactNode } from 'react';
import styles from './field-group.module.css';

/** Fields that belong together, under one name. */
export function FieldGroup({ legend, children }: { legend: string; children: ReactNode }) {
  return (
    <fieldset className={styles.group}>
      <legend className={styles.legend}>{legend}</legend>
      {children}
    </fieldset>
  );
}
