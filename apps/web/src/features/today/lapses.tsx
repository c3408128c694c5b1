import type { TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import styles from './today.module.css';

type Lapse = TodayAnswer['lapses'][number];

/** Calibrations, qualifications and talks that end or are missing before the shift is over. */
export function Lapses({ shutdownId, today }: { shutdownId: string; today: TodayAnswer }) {
  const text = useText('today');
  const format = useFormat();
  return (
    <section className={styles.section}>
      <h2>{text('lapses-before', { time: format.time(today.shift.end) })}</h2>
      {today.lapses.length === 0 && <p>{text('nothing-lapses')}</p>}
      <ul className={styles.lapses}>
        {today.lapses.map((lapse) => (
          <LapseLine key={JSON.stringify(lapse)} shutdownId={shutdownId} lapse={lapse} />
        ))}
      </ul>
    </section>
  );
}

function LapseLine({ shutdownId, lapse }: { shutdownId: string; lapse: Lapse }) {
  const text = useText('today');
  const trade = useTrade();
  const format = useFormat();
  const line = (href: string, what: string, when: string) => (
    <li className={styles.lapse}>
      <Link href={href}>{what}</Link>
      <span className={styles.late}>{when}</span>
    </li>
  );
  switch (lapse.what) {
    case 'calibration':
      return line(
        addresses.tools({ find: lapse.tag }),
        text('lapse-calibration', { tag: lapse.tag }),
        text('until', { day: format.calendarDay(lapse.validThrough) }),
      );
    case 'provisional-tool':
      return line(
        addresses.tools({ find: lapse.tag }),
        text('lapse-provisional', { tag: lapse.tag }),
        text('clear-by', { time: format.dayTime(lapse.clearBy) }),
      );
    case 'qualification':
      return line(
        addresses.person(lapse.person.personId),
        text('lapse-qualification', {
          name: lapse.person.name ?? text('name-erased'),
          what: lapse.qualifiedFor.map((each) => trade.word('qualified', each)).join(', '),
        }),
        text('until', { day: format.calendarDay(lapse.validThrough) }),
      );
    case 'talk':
      return line(
        addresses.talks(shutdownId),
        text('lapse-talk', { code: lapse.code, revision: format.count(lapse.revision), crew: lapse.crew.code }),
        text('talk-missing', { count: lapse.missing.length, shown: format.count(lapse.missing.length) }),
      );
  }
}
