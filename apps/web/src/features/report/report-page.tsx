import type { AreaProgress, TodayAnswer } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { areasQuery, packsQuery, systemsQuery, todayQuery } from '../../app/reads.ts';
import { useMe } from '../../app/session.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Curve } from '../today/curve.tsx';
import { TodaySub } from '../today/today-sub.tsx';
import { useTodayTitle } from '../today/today-title.ts';
import { AreaTable } from './area-table.tsx';
import { RecordHead } from './record-head.tsx';
import styles from './report.module.css';
import { sumRow } from './sum-row.ts';

/** One page for management and the client: the figures of Today and Areas, to be printed in black and white. */
export function ReportPage() {
  const text = useText('report');
  const format = useFormat();
  const { site } = useMe();
  const shutdownId = useShutdownId();
  const { data: today } = useSuspenseQuery(todayQuery(shutdownId));
  const { data: areas } = useSuspenseQuery(areasQuery(shutdownId));
  const { data: systems } = useSuspenseQuery(systemsQuery(shutdownId));
  const { data: packs } = useSuspenseQuery(packsQuery(shutdownId));
  const title = useTodayTitle(today, packs.rows);
  return (
    <div className={styles.page}>
      <PageHeader
        over={text('head', { site: site.name, shutdown: today.shutdown.name })}
        title={title}
        documentTitle={text('report')}
        sub={
          <>
            <TodaySub shutdownId={shutdownId} today={today} /> · {text('as-of', { at: format.dayTime(today.now) })}
          </>
        }
        actions={
          <Button onClick={() => window.open(addresses.reportPaper(shutdownId), '_blank', 'noopener')}>
            {text('print')}
          </Button>
        }
      />
      <AreaTable shutdownId={shutdownId} rows={areas.rows} systems={systems.rows} today={today} />
      <div className={styles.below}>
        <Curve curve={today.curve} total={today.total} today={today.shift.day} />
        <Meaning rows={areas.rows} today={today} />
      </div>
      <RecordHead shutdownId={shutdownId} />
    </div>
  );
}

function Meaning({ rows, today }: { rows: readonly AreaProgress[]; today: TodayAnswer }) {
  const text = useText('report');
  const format = useFormat();
  const sum = sumRow(rows, today);
  const { stillIn } = today;
  return (
    <section className={styles.meaning}>
      <h2>{text('before-start')}</h2>
      <ul>
        <li>
          {text('blinds-in', {
            count: stillIn.blindsIn,
            shown: format.count(stillIn.blindsIn),
            overdue: format.count(stillIn.blindsOverdue),
          })}
        </li>
        <li>
          {text('fittings', {
            gaskets: format.count(stillIn.temporaryGaskets),
            bolts: format.count(stillIn.temporaryBolts),
          })}
        </li>
        <li>{text('not-proven', { count: sum.total - sum.proven, shown: format.count(sum.total - sum.proven) })}</li>
        <li>{text('waiting', { count: sum.waiting, shown: format.count(sum.waiting) })}</li>
        <li>{text('holds', { count: today.holds, shown: format.count(today.holds) })}</li>
        <li>{text('reviews', { count: today.needsReview, shown: format.count(today.needsReview) })}</li>
      </ul>
      <p className={styles.soft}>{text('same-figures')}</p>
    </section>
  );
}
