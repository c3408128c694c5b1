import { KeyValues } from '../../ui/key-values.tsx';
import styles from './printed-list.module.css';

interface Props {
  readonly title: string;
  /** everything that was entered, and nothing else */
  readonly inputs: readonly { readonly name: string; readonly value: string }[];
}

/** On paper the inputs are a list. */
export function PrintedList({ title, inputs }: Props) {
  return (
    <section className={styles.printed}>
      <h2>{title}</h2>
      <KeyValues items={inputs} />
    </section>
  );
}
