import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { useReading } from './numbers.ts';
import styles from './work.module.css';

const points = [0, 1, 2, 3] as const;

/** The gap between the flanges at four points, a quarter apart, from bolt 1 clockwise. */
export function GapFields(props: {
  readonly values: readonly (number | null)[];
  readonly onChange: (values: readonly (number | null)[]) => void;
}) {
  const text = useText('work');
  const gap = useReading('gap');
  return (
    <fieldset className={styles.group}>
      <legend className={styles.legend}>{text('gaps')}</legend>
      <p className={styles.soft}>{text('gaps-how')}</p>
      <div className={styles.pair}>
        {points.map((point) => (
          <NumberField
            key={point}
            label={text(`gap-${point}`)}
            unit={gap.unit}
            least={0}
            value={gap.shown(props.values[point])}
            onChange={(shown) =>
              props.onChange(points.map((at) => (at === point ? gap.held(shown) : (props.values[at] ?? null))))
            }
          />
        ))}
      </div>
    </fieldset>
  );
}
