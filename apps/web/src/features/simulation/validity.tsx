import type { SimulationLimit } from '@seatwell/calc';
import { useText } from '../../texts/text-provider.tsx';
import styles from './simulation.module.css';

/** The sentences of the calculation in the language of the reader. */
export const LIMIT_TEXTS = {
  'simulation.limits.overrides': 'limits-overrides',
  'simulation.limits.elastic': 'limits-elastic',
  'simulation.limits.pair': 'limits-pair',
  'simulation.limits.cold': 'limits-cold',
  'simulation.limits.gasket': 'limits-gasket',
  'simulation.limits.band': 'limits-band',
  'simulation.limits.validated': 'limits-validated',
  'simulation.limits.purpose': 'limits-purpose',
} as const satisfies Record<SimulationLimit, string>;

/** What a simulation can and cannot say stands beside every result, on the screen and in print. */
export function Validity() {
  const text = useText('simulation');
  return (
    <section className={styles.section}>
      <h2>{text('validity')}</h2>
      <ul className={styles.limits}>
        {Object.values(LIMIT_TEXTS).map((key) => (
          <li key={key}>{text(key)}</li>
        ))}
      </ul>
    </section>
  );
}
