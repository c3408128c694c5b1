import type { MyJointRow } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import { taskFor } from '../work/tasks.ts';
import styles from './my-joints.module.css';

/** One joint: which, where, and the one thing that is next. */
export function JointCard({ row, primary }: { row: MyJointRow; primary: boolean }) {
  const text = useText('mine');
  const trade = useTrade();
  const go = useGo();
  const shutdownId = useShutdownId();
  const partTight = row.can === 'part-tight';
  const task = taskFor(row);
  const tightens = task === 'tighten' || partTight;
  const next = tightens ? addresses.tighten(shutdownId, row.jointId) : addresses.work(shutdownId, row.jointId);
  const facts = [
    trade.flange(row.size, row.rating),
    trade.bolts(row.boltCount, row.boltThread),
    row.location,
    row.line,
  ];
  return (
    <li className={styles.card} data-stop={partTight ? '' : undefined}>
      <div className={styles.head}>
        <h3 className={styles.tag}>
          <Link href={addresses.joint(shutdownId, row.jointId)}>{row.tag}</Link>
        </h3>
        <StageWord stage={row.stage}>{trade.word('stage', row.stage)}</StageWord>
      </div>
      <p>
        {facts.filter(Boolean).join(' · ')}{' '}
        <Link
          href={addresses.sheet(shutdownId, row.jointId)}
          target="_blank"
          aria-label={text('sheet-of', { tag: row.tag })}
        >
          {text('sheet')}
        </Link>
      </p>
      {partTight && <LeftPartTight row={row} />}
      {row.flags.length > 0 && (
        <p className={styles.flags}>
          {row.flags
            .filter((flag) => flag !== 'part-tight')
            .map((flag) => trade.word('flag', flag))
            .join(', ')}
        </p>
      )}
      <Button kind={primary ? 'primary' : 'plain'} wide onClick={() => go(next)}>
        {partTight
          ? text(row.restart?.finalRound ? 'go-on-final-round' : 'go-on', { pass: String(row.restart?.pass ?? '') })
          : task === null
            ? text('open-it')
            : text(`do-${task}`, { what: trade.waitsFor(row.waitsFor) })}
      </Button>
    </li>
  );
}

function LeftPartTight({ row: { restart } }: { row: MyJointRow }) {
  const text = useText('mine');
  const format = useFormat();
  if (!restart || restart.leftAt === null) return <p className={styles.stop}>{text('part-tight')}</p>;
  const who = restart.leftBy.map((each) => each.name ?? text('name-erased')).join(', ');
  return (
    <>
      <p className={styles.stop}>
        {text(restart.repeats ? 'left-in-pass' : 'left-after-pass', {
          who,
          when: format.dayTime(restart.leftAt),
          pass: format.count(restart.repeats ? restart.pass : restart.pass - 1),
        })}
        {restart.lastBolt !== null && ` ${text('last-bolt', { bolt: String(restart.lastBolt) })}`}
      </p>
      {restart.why !== null && <p>{text('because', { why: restart.why })}</p>}
      <p>
        {restart.finalRound
          ? text('restart-final-round')
          : text(restart.repeats ? 'restart-first-bolt' : 'restart-next-pass', { pass: format.count(restart.pass) })}
      </p>
    </>
  );
}
