import type { SimulatedStep } from '@seatwell/calc';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import styles from './simulation.module.css';

interface Props {
  readonly steps: readonly SimulatedStep[];
  /** step in sight */
  readonly at: number;
  /** the same scale for both patterns, MPa */
  readonly most_MPa: number;
}

const width = 320;
const height = 84;
const top = 6;

/** Lowest and highest gasket stress around the flange, step by step, as a band. */
export function StressBand({ steps, at, most_MPa }: Props) {
  const text = useText('simulation');
  const format = useFormat();
  const x = (index: number) => (steps.length < 2 ? 0 : (index / (steps.length - 1)) * width);
  const y = (stress: number) => height - (stress / Math.max(1, most_MPa)) * (height - top);
  const upper = steps.map((step, index) => `${x(index).toFixed(1)},${y(step.gasketStress_MPa.max).toFixed(1)}`);
  const lower = steps
    .map((step, index) => `${x(index).toFixed(1)},${y(step.gasketStress_MPa.min).toFixed(1)}`)
    .reverse();
  const now = steps[Math.min(at, steps.length - 1)];
  return (
    <figure className={styles.edge}>
      <svg
        className={styles.drawing}
        viewBox={`0 0 ${width} ${height + 2}`}
        role="img"
        aria-label={text('stress-label')}
      >
        <polygon className={styles.band} points={[...upper, ...lower].join(' ')} />
        <line className={styles.base} x1="0" x2={width} y1={height} y2={height} />
        <line
          className={styles.cursor}
          x1={x(Math.min(at, steps.length - 1))}
          x2={x(Math.min(at, steps.length - 1))}
          y1="0"
          y2={height}
        />
      </svg>
      <figcaption className={styles.soft}>
        {now &&
          text('stress-now', {
            range: format.range('stress', now.gasketStress_MPa.min, now.gasketStress_MPa.max),
            peak: format.quantity('stress', now.gasketPeak_MPa),
          })}
      </figcaption>
    </figure>
  );
}
