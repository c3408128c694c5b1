import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { packsQuery, todayQuery } from '../../app/reads.ts';
import { useMe } from '../../app/session.ts';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Curve } from './curve.tsx';
import { Lapses } from './lapses.tsx';
import { LastShift } from './last-shift.tsx';
import { PackStoppers } from './pack-stoppers.tsx';
import { PartTight } from './part-tight.tsx';
import { StillIn } from './still-in.tsx';
import { TightByArea } from './tight-by-area.tsx';
import { ToSettle } from './to-settle.tsx';
import styles from './today.module.css';
import { TodaySub } from './today-sub.tsx';
import { useTodayTitle } from './today-title.ts';
import { Waiting } from './waiting.tsx';

/** The first screen: what is dangerous, what stops the next packs, where the work stands against the plan. */
export function TodayPage() {
  const text = useText('today');
  const format = useFormat();
  const { site } = useMe();
  const shutdownId = useShutdownId();
  const { data: today } = useSuspenseQuery(todayQuery(shutdownId));
  const { data: packs } = useSuspenseQuery(packsQuery(shutdownId));
  const title = useTodayTitle(today, packs.rows);
  if (today.total === 0) return <EmptyToday name={today.shutdown.name} />;
  return (
    <>
      <p className={styles.printHead}>
        {text('print-head', { site: site.name, shutdown: today.shutdown.name, at: format.dayTime(today.now) })}
      </p>
      <PageHeader
        title={title}
        documentTitle={text('today')}
        sub={<TodaySub shutdownId={shutdownId} today={today} />}
        actions={<Button onClick={() => window.print()}>{text('print')}</Button>}
      />
      <div className={styles.page}>
        <div className={styles.column}>
          {today.partTight.length > 0 && <PartTight shutdownId={shutdownId} rows={today.partTight} />}
          <PackStoppers shutdownId={shutdownId} packs={today.packs} all={packs.rows} />
          <TightByArea shutdownId={shutdownId} rows={today.tightByArea} />
          <Waiting shutdownId={shutdownId} rows={today.signOffs} />
        </div>
        <div className={styles.column}>
          <StillIn shutdownId={shutdownId} stillIn={today.stillIn} />
          <ToSettle shutdownId={shutdownId} today={today} />
          <LastShift shutdownId={shutdownId} rows={today.lastShiftByArea} />
          <Lapses shutdownId={shutdownId} today={today} />
          <Curve curve={today.curve} total={today.total} today={today.shift.day} />
        </div>
      </div>
    </>
  );
}

function EmptyToday({ name }: { name: string }) {
  const text = useText('today');
  const go = useGo();
  const shutdownId = useShutdownId();
  return (
    <>
      <PageHeader title={text('title-empty', { name })} documentTitle={text('today')} />
      <EmptyState
        title={text('empty')}
        actions={
          <Button kind="primary" onClick={() => go(addresses.importRegister(shutdownId))}>
            {text('import')}
          </Button>
        }
      >
        <p>
          {text('empty-detail')} <Link href={addresses.setup(shutdownId)}>{text('set-up')}</Link>
        </p>
      </EmptyState>
    </>
  );
}
