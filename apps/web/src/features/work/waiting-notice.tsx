import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';
import type { Job } from './job.ts';
import styles from './work.module.css';

/** What the joint waits for and who moves it on, where that is not a task of the crew. */
export function WaitingNotice({ job }: { job: Job }) {
  const text = useText('work');
  const trade = useTrade();
  const { waitsFor } = job.make;
  const hold = job.joint.holds[0];
  const repair = waitsFor.code === 'repair';
  const again = (task: string) => addresses.work(job.shutdownId, job.joint.jointId, { do: task });
  if (waitsFor.code === 'nothing') return <Notice title={text('nothing-to-do')} />;
  return (
    <Notice kind={hold || repair ? 'stop' : 'attention'} title={text('waits-for', { what: trade.waitsFor(waitsFor) })}>
      {hold && <p>{text('hold-because', { reason: hold.reason, who: trade.word('role', hold.releasedBy) })}</p>}
      {!hold && waitsFor.by !== null && <p>{text('waits-by', { who: trade.word('role', waitsFor.by) })}</p>}
      {repair && (
        <>
          <p>{text(job.state.underPressure ? 'repair-under-pressure' : 'repair-ways')}</p>
          {!job.state.underPressure && (
            <ul className={styles.more}>
              <li>
                <Link href={addresses.tighten(job.shutdownId, job.joint.jointId)}>{text('repair-retighten')}</Link>
              </li>
              <li>
                <Link href={again('loosen')}>{text('repair-loosen')}</Link>
              </li>
              <li>
                <Link href={again('open')}>{text('repair-open')}</Link>
              </li>
            </ul>
          )}
        </>
      )}
    </Notice>
  );
}
