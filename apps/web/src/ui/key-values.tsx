import { Fragment, type ReactNode } from 'react';
import styles from './key-values.module.css';

/** What is known of a thing, name by name. */
export function KeyValues({ items }: { items: readonly { name: string; value: ReactNode }[] }) {
  return (
    <dl className={styles.list}>
      {items.map((item) => (
        <Fragment key={item.name}>
          <dt>{item.name}</dt>
          <dd>{item.value}</dd>
        </Fragment>
      ))}
    </dl>
  );
}
