import { addresses } from '../../app/addresses.ts';
import { useGo } from '../../app/use-go.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import type { Job } from './job.ts';
import styles from './work.module.css';

/** The way to the bolt plan, with what has to be known before the tool is on the nut. */
export function TightenLink({ job }: { job: Job }) {
  const text = useText('work');
  const format = useFormat();
  const go = useGo();
  const { waitsFor, restartFrom, procedure } = job.make;
  const from = waitsFor.code === 'relaxation-pass' ? waitsFor.data.from : undefined;
  const early = typeof from === 'string' && Date.parse(from) > Date.parse(job.page.now);
  return (
    <div className={styles.form}>
      {restartFrom?.repeats && (
        <Notice kind="stop" title={text('part-tight-title')}>
          <p>
            {text('part-tight-left', {
              who: restartFrom.leftBy.map((each) => each.name ?? text('name-erased')).join(', '),
              when: restartFrom.leftAt === null ? '' : format.dayTime(restartFrom.leftAt),
              pass: format.count(restartFrom.pass),
            })}
          </p>
        </Notice>
      )}
      {early && <p>{text('relaxation-from', { when: format.dayTime(String(from)) })}</p>}
      {(procedure?.content.cautions ?? []).length > 0 && (
        <Notice title={text('procedure-cautions')}>
          <ul className={styles.cautions}>
            {procedure?.content.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </Notice>
      )}
      <StickyActionBar
        actions={
          <Button
            kind="primary"
            size="large"
            wide
            onClick={() => go(addresses.tighten(job.shutdownId, job.joint.jointId))}
          >
            {text('to-bolt-plan')}
          </Button>
        }
      />
    </div>
  );
}
