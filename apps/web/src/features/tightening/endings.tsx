import { addresses } from '../../app/addresses.ts';
import { useGo } from '../../app/use-go.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import type { Job } from '../work/job.ts';
import type { RunningPass, WaitingFact } from './draft.ts';
import styles from './tightening.module.css';

/** Nothing is left to tighten: the joint is tight, or will be once what was done has reached the record. */
export function AllTightened({ job, waiting }: { job: Job; waiting: readonly WaitingFact[] }) {
  const text = useText('tightening');
  const trade = useTrade();
  const go = useGo();
  const tight = job.state.tightAt !== null && waiting.length === 0;
  return (
    <div className={`${styles.setup} ${styles.inner}`}>
      <h2>{text(waiting.length > 0 ? 'done-and-waiting' : tight ? 'tight-now' : 'not-to-tighten')}</h2>
      {waiting.length === 0 && <p>{text('then-waits', { what: trade.waitsFor(job.make.waitsFor) })}</p>}
      <Button kind="primary" size="large" wide onClick={() => go(addresses.work(job.shutdownId, job.joint.jointId))}>
        {text('go-to-next')}
      </Button>
      <Button size="large" wide onClick={() => go(addresses.myJoints(job.shutdownId))}>
        {text('to-my-joints')}
      </Button>
    </div>
  );
}

/** Why there is no plan to tighten by. */
export function NotToTighten({ job, reason }: { job: Job; reason: string }) {
  const text = useText('tightening');
  const trade = useTrade();
  return (
    <div className={`${styles.setup} ${styles.inner}`}>
      <Notice kind="stop" title={text('cannot-tighten')}>
        <p>{reason}</p>
        <p>{text('cannot-tighten-who', { who: trade.word('role', 'engineer') })}</p>
        <p>{text('then-waits', { what: trade.waitsFor(job.make.waitsFor) })}</p>
      </Notice>
    </div>
  );
}

/** Taps of this device that the record has overtaken: somebody else recorded meanwhile. */
export function Stale({ running, onDrop }: { running: RunningPass; onDrop: () => void }) {
  const text = useText('tightening');
  const format = useFormat();
  return (
    <div className={`${styles.setup} ${styles.inner}`}>
      <Notice kind="stop" title={text('overtaken-title')}>
        <p>{text('overtaken', { pass: format.count(running.pass), bolts: format.count(running.stepsDone) })}</p>
      </Notice>
      <Button kind="primary" size="large" wide onClick={onDrop}>
        {text('drop-taps')}
      </Button>
    </div>
  );
}
