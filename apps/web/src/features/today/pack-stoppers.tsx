import type { PackSummary, TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Late } from '../packs/late.tsx';
import styles from './today.module.css';
import { packsWaitingForSignature } from './today-title.ts';
import { useStopperWords } from './use-stopper-words.ts';

type PackRow = TodayAnswer['packs']['rows'][number];

interface Props {
  readonly shutdownId: string;
  readonly packs: TodayAnswer['packs'];
  readonly all: readonly PackSummary[];
}

/** Packs that a signature sets free come first, whenever they are planned; then the next by their day. */
export function stoppedPacks(next: readonly PackRow[], all: readonly PackSummary[]): readonly PackRow[] {
  const signed = packsWaitingForSignature(all).flatMap(({ packId, number, plannedOn, stoppers: [stopper] }) =>
    stopper === undefined ? [] : [{ packId, number, plannedOn, stopper, more: 0 }],
  );
  const first = new Set(signed.map((row) => row.packId));
  return [...signed, ...next.filter((row) => !first.has(row.packId))];
}

/** What stands between the next test packs and their pressure, each with who moves it on. */
export function PackStoppers({ shutdownId, packs, all }: Props) {
  const text = useText('today');
  const format = useFormat();
  const words = useStopperWords();
  const rows = stoppedPacks(packs.rows, all);
  return (
    <section className={styles.section}>
      <div className={styles.head}>
        <h2>{text('packs-stopped')}</h2>
        <Link href={addresses.packs(shutdownId)}>
          {text('all-packs', { count: packs.all, shown: format.count(packs.all) })}
        </Link>
      </div>
      {rows.length === 0 && <p>{text('no-packs-waiting')}</p>}
      <ul className={styles.packs}>
        {rows.map((pack) => (
          <li key={pack.packId} className={styles.pack}>
            <Link className={styles.packNumber} href={addresses.pack(shutdownId, pack.packId)}>
              {pack.number}
            </Link>
            <span>
              {words.stopper(pack.stopper)}
              <span className={styles.soft}>
                {pack.plannedOn !== null && ` · ${text('planned-on', { day: format.calendarDay(pack.plannedOn) })}`}
                <Late plannedOn={pack.plannedOn} proven={false} />
                {pack.more > 0 && ` · ${text('more-stoppers', { count: pack.more, shown: format.count(pack.more) })}`}
              </span>
            </span>
            <span className={styles.who}>{words.who(pack.stopper.who)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
