import type { TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Figure, FigureRow } from '../../ui/figure.tsx';
import styles from './today.module.css';

/** Records, holds and leaks that somebody must deal with. */
export function ToSettle({ shutdownId, today }: { shutdownId: string; today: TodayAnswer }) {
  const text = useText('today');
  const format = useFormat();
  const tone = (count: number) => (count > 0 ? 'attention' : 'plain');
  return (
    <section className={styles.section}>
      <h2>{text('to-settle')}</h2>
      <FigureRow>
        <Figure
          value={format.count(today.leaking)}
          label={text('leaking')}
          tone={today.leaking > 0 ? 'stop' : 'plain'}
          href={addresses.register(shutdownId, { flag: 'leaking' })}
        />
        <Figure
          value={format.count(today.holds)}
          label={text('holds')}
          tone={tone(today.holds)}
          href={addresses.register(shutdownId, { flag: 'on-hold' })}
        />
        <Figure
          value={format.count(today.needsReview)}
          label={text('reviews')}
          tone={tone(today.needsReview)}
          href={addresses.reviews(shutdownId)}
        />
      </FigureRow>
    </section>
  );
}
