import type { TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Figure, FigureRow } from '../../ui/figure.tsx';
import styles from './today.module.css';

/** What was put into the plant and must come out of it again. */
export function StillIn({ shutdownId, stillIn }: { shutdownId: string; stillIn: TodayAnswer['stillIn'] }) {
  const text = useText('today');
  const format = useFormat();
  const fittings = addresses.register(shutdownId, { flag: 'temporary-fitting' });
  return (
    <section className={styles.section}>
      <h2>{text('still-in')}</h2>
      <div className={styles.figures}>
        <FigureRow>
          <Figure
            value={format.count(stillIn.blindsIn)}
            label={text('blinds-in')}
            href={addresses.blinds(shutdownId, { state: 'in' })}
          />
          <Figure
            value={format.count(stillIn.blindsOverdue)}
            label={text('blinds-overdue')}
            tone={stillIn.blindsOverdue > 0 ? 'attention' : 'plain'}
            href={addresses.blinds(shutdownId, { state: 'overdue' })}
          />
          <Figure value={format.count(stillIn.temporaryGaskets)} label={text('temporary-gaskets')} href={fittings} />
          <Figure value={format.count(stillIn.temporaryBolts)} label={text('temporary-bolts')} href={fittings} />
          <Figure
            value={format.count(stillIn.openEnds)}
            label={text('open-ends')}
            href={addresses.register(shutdownId, { stage: ['open', 'faces-accepted'] })}
          />
          <Figure
            value={format.count(stillIn.openEndsUncovered)}
            label={text('open-ends-uncovered')}
            tone={stillIn.openEndsUncovered > 0 ? 'attention' : 'plain'}
            href={addresses.register(shutdownId, { stage: ['open', 'faces-accepted'] })}
          />
        </FigureRow>
      </div>
    </section>
  );
}
