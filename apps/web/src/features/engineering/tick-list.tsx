import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import styles from './engineering.module.css';

interface Props<Value extends string> {
  readonly label: string;
  readonly options: readonly Value[];
  readonly word: (value: Value) => string;
  readonly value: readonly Value[];
  readonly onChange: (value: Value[]) => void;
}

/** Several of a short list; none ticked means all. */
export function TickList<Value extends string>({ label, options, word, value, onChange }: Props<Value>) {
  const text = useText('engineering');
  return (
    <fieldset className={styles.group}>
      <legend>{value.length === 0 ? text('all-of', { label }) : label}</legend>
      <div className={styles.ticks}>
        {options.map((option) => (
          <Checkbox
            key={option}
            label={word(option)}
            checked={value.includes(option)}
            onChange={(on) => onChange(on ? [...value, option] : value.filter((each) => each !== option))}
          />
        ))}
      </div>
    </fieldset>
  );
}
