import type { MyJointRow } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useMay } from '../../app/session.ts';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useKeepForLater } from '../../offline/use-keep-for-later.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { fieldAddresses } from '../work/addresses.ts';
import { groupMine, type SignatureKind, searchMine } from './groups.ts';
import { JointCard } from './joint-card.tsx';
import styles from './my-joints.module.css';
import { myJointsQuery } from './my-joints-query.ts';

/** What the person can do now, the most dangerous first; then what waits, and for whom. */
export function MyJointsPage() {
  const text = useText('mine');
  const format = useFormat();
  const go = useGo();
  const may = useMay();
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(myJointsQuery(shutdownId));
  useKeepForLater(shutdownId, data.rows);
  const [typed, setTyped] = useState('');
  const found = searchMine(data.rows, typed);
  const groups = groupMine(found);
  const doable = groups.partTight.length + groups.now.length + [...groups.toSign.values()].flat().length;
  const open = () => {
    const only = found.length === 1 ? found[0] : undefined;
    if (only) go(addresses.work(shutdownId, only.jointId));
  };
  return (
    <div className={styles.page}>
      <PageHeader
        title={title(groups.partTight.length, doable)}
        documentTitle={text('my-joints')}
        sub={
          data.crews.length > 0
            ? text('of-crews', { crews: data.crews.map((crew) => crew.code).join(', ') })
            : undefined
        }
      />
      <form
        onSubmit={(event) => {
          event.preventDefault();
          open();
        }}
      >
        <TextField label={text('search')} hint={text('search-hint')} type="search" value={typed} onChange={setTyped} />
      </form>
      {data.rows.length === 0 && <EmptyState title={text('none')}>{text('none-detail')}</EmptyState>}
      {data.rows.length > 0 && found.length === 0 && <p>{text('no-match', { typed })}</p>}
      <Cards title={text('part-tight-group')} rows={groups.partTight} primaryFirst />
      {[...groups.toSign].map(([kind, rows]) => (
        <div key={kind} className={styles.sign}>
          <span>{text(`sign-${kind}`, { count: rows.length, joints: format.count(rows.length) })}</span>
          <Button onClick={() => go(fieldAddresses.sign(shutdownId, kind as SignatureKind))}>
            {text('look-and-sign')}
          </Button>
        </div>
      ))}
      <Cards title={text('now-group')} rows={groups.now} primaryFirst={groups.partTight.length === 0} />
      <Waiting rows={groups.waiting} />
      {data.truncated && <p>{text('truncated')}</p>}
      <p className={styles.row}>
        <Link href={fieldAddresses.foundJoint(shutdownId)}>{text('found-joint')}</Link>
        {may('hold-talk') && <Link href={fieldAddresses.talk(shutdownId)}>{text('hold-talk')}</Link>}
      </p>
    </div>
  );

  function title(partTight: number, now: number): string {
    if (partTight > 0) return text('title-part-tight', { count: partTight, joints: format.count(partTight) });
    return now > 0 ? text('title-now', { count: now, joints: format.count(now) }) : text('title-nothing');
  }
}

function Cards(props: { title: string; rows: readonly MyJointRow[]; primaryFirst: boolean }) {
  if (props.rows.length === 0) return null;
  return (
    <section className={styles.group} aria-label={props.title}>
      <h2>{props.title}</h2>
      <ul className={styles.list}>
        {props.rows.map((row, index) => (
          <JointCard key={row.jointId} row={row} primary={props.primaryFirst && index === 0} />
        ))}
      </ul>
    </section>
  );
}

/** What waits for others is long and seldom read: the first of it, and the rest on request. */
const WAITING_SHOWN = 12;

function Waiting({ rows }: { rows: readonly MyJointRow[] }) {
  const text = useText('mine');
  const format = useFormat();
  const [all, setAll] = useState(false);
  const trade = useTrade();
  const shutdownId = useShutdownId();
  if (rows.length === 0) return null;
  return (
    <section className={styles.group} aria-label={text('waiting-group')}>
      <h2>{text('waiting-group')}</h2>
      <ul className={styles.list}>
        {(all ? rows : rows.slice(0, WAITING_SHOWN)).map((row) => {
          const wait = row.blockedBy ?? row.waitsFor;
          return (
            <li key={row.jointId} className={styles.row}>
              <Link href={addresses.work(shutdownId, row.jointId)}>
                <strong>{row.tag}</strong>
              </Link>
              <span className={styles.soft}>
                {wait.by === null
                  ? text('waits', { what: trade.waitsFor(wait) })
                  : text('waits-by', { what: trade.waitsFor(wait), who: trade.word('role', wait.by) })}
              </span>
            </li>
          );
        })}
      </ul>
      {!all && rows.length > WAITING_SHOWN && (
        <Button onClick={() => setAll(true)}>
          {text('waiting-more', { count: format.count(rows.length - WAITING_SHOWN) })}
        </Button>
      )}
    </section>
  );
}
