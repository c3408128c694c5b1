import { type CountsByStage, STAGES } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { StageGlyph } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import { ShareBar } from '../../ui/share-bar.tsx';
import styles from './areas.module.css';
import { progressOf } from './progress.ts';

interface Props {
  readonly total: number;
  readonly counts: CountsByStage;
  /** joints planned up to now, where there is a plan */
  readonly planned?: number;
  readonly hrefOf: (stage: string) => string;
}

/** How far the joints are: one bar, and beside each stage that holds some the way to them. */
export function StageShare({ total, counts, planned, hrefOf }: Props) {
  const text = useText('areas');
  const trade = useTrade();
  const format = useFormat();
  const { checked, tight, begun } = progressOf(counts);
  return (
    <div className={styles.share}>
      <p>
        <strong>
          {text('tight-share', {
            percent: format.percent(total === 0 ? 0 : (checked + tight) / total),
            total: format.count(total),
          })}
        </strong>
        {planned !== undefined && (
          <span className={styles.soft}>
            {' · '}
            {text('planned-share', { percent: format.percent(total === 0 ? 0 : planned / total) })}
          </span>
        )}
      </p>
      <ShareBar values={[checked, tight, begun]} total={total} mark={planned} />
      <ul className={styles.stages}>
        {STAGES.filter((stage) => counts[stage] > 0).map((stage) => (
          <li key={stage}>
            <Link className={styles.stage} data-stop={stage === 'part-tight' ? '' : undefined} href={hrefOf(stage)}>
              <StageGlyph stage={stage} size={20} />
              <span>{trade.word('stage', stage)}</span>
              <strong>{format.count(counts[stage])}</strong>
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
