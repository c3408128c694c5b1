import { useSearch } from '@tanstack/react-router';
import { lazy, Suspense } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useGo } from '../../app/use-go.ts';
import { QueuedNotice } from '../../offline/queued-notice.tsx';
import { useQueuedOn } from '../../offline/use-outbox.ts';
import { useText } from '../../texts/text-provider.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Link } from '../../ui/link.tsx';
import { CheckTask } from './check-task.tsx';
import { FacesTask } from './faces-task.tsx';
import { HoldTask } from './hold-task.tsx';
import { type Job, useJob } from './job.ts';
import { JointHead } from './joint-head.tsx';
import { LeakTask } from './leak-task.tsx';
import { LoosenTask } from './loosen-task.tsx';
import { NipUpTask } from './nip-up-task.tsx';
import { OpenTask } from './open-task.tsx';
import { PaperForm, useFromPaper } from './paper-form.tsx';
import { PunchTask } from './punch-task.tsx';
import { StudTask } from './stud-task.tsx';
import { taskAhead } from './task-ahead.ts';
import { besideThePlan, type TaskName, taskNamed } from './tasks.ts';
import { TightenLink } from './tighten-link.tsx';
import { WaitingNotice } from './waiting-notice.tsx';
import styles from './work.module.css';

const PaperPassTask = lazy(() => import('./paper-pass-task.tsx').then((m) => ({ default: m.PaperPassTask })));

/** One task of one joint: what comes next, or what was asked for. */
export function WorkPage() {
  const text = useText('work');
  const job = useJob();
  if (!job) return <EmptyState title={text('no-make')}>{text('no-make-detail')}</EmptyState>;

  return <Work key={job.make.makeId} job={job} />;
}

function Work({ job }: { job: Job }) {
  const text = useText('work');
  const asked = taskNamed((useSearch({ strict: false }) as { do?: string }).do);
  const go = useGo();
  const queued = useQueuedOn(job.joint.jointId);
  const ahead = taskAhead(job.make, queued);
  const task = asked ?? ahead;
  const done = () => go(addresses.work(job.shutdownId, job.joint.jointId), { replace: true });
  return (
    <div className={styles.page}>
      <JointHead job={job} task={text(task === null ? 'task-none' : `task-${task}`)} />
      <QueuedNotice facts={queued} />
      {task !== null && <h2>{text(`task-${task}`)}</h2>}
      {/* A new stage is a new form: nothing typed for the one before stays in it. */}
      <PaperForm key={`${job.make.makeId} ${job.make.stage} ${task}`} possible={task !== null} now={job.page.now}>
        <Task task={task} job={job} onDone={done} />
      </PaperForm>
      <Beside job={job} task={task} ahead={ahead} />
    </div>
  );
}

function Task({ task, job, onDone }: { task: TaskName | null; job: Job; onDone: () => void }) {
  switch (task) {
    case 'open':
      return <OpenTask job={job} onDone={onDone} />;
    case 'faces':
      return <FacesTask job={job} onDone={onDone} />;
    case 'nip-up':
      return <NipUpTask job={job} onDone={onDone} />;
    case 'tighten':
      return <Tightening job={job} onDone={onDone} />;
    case 'self':
    case 'chargehand':
      return <CheckTask job={job} level={task} onDone={onDone} />;
    case 'stud':
      return <StudTask job={job} onDone={onDone} />;
    case 'loosen':
      return <LoosenTask job={job} onDone={onDone} />;
    case 'leak':
      return <LeakTask job={job} onDone={onDone} />;
    case 'punch':
      return <PunchTask job={job} onDone={onDone} />;
    case 'hold':
      return <HoldTask job={job} onDone={onDone} />;
    case null:
      return <WaitingNotice job={job} />;
  }
}

function Tightening({ job, onDone }: { job: Job; onDone: () => void }) {
  const from = useFromPaper();
  if (!from) return <TightenLink job={job} />;
  return (
    <Suspense fallback={null}>
      <PaperPassTask job={job} from={from} onDone={onDone} />
    </Suspense>
  );
}

/** What can happen at any time beside the plan. */
function Beside({ job, task, ahead }: { job: Job; task: TaskName | null; ahead: TaskName | null }) {
  const text = useText('work');
  const address = (name?: string) => addresses.work(job.shutdownId, job.joint.jointId, { do: name });
  const fits = (event: string | null) =>
    event === null || job.make.actions.some((action) => action.type === event && action.allowed);
  const offered = besideThePlan.filter((each) => each.task !== task && fits(each.event));
  return (
    <nav aria-label={text('beside')}>
      <h2>{text('beside')}</h2>
      <ul className={styles.more}>
        {ahead !== task && (
          <li>
            <Link href={address()}>{text(ahead === null ? 'back-to-joint-state' : `task-${ahead}`)}</Link>
          </li>
        )}
        {offered.map((each) => (
          <li key={each.task}>
            <Link href={address(each.task)}>{text(`task-${each.task}`)}</Link>
          </li>
        ))}
        <li>
          <Link href={addresses.sheet(job.shutdownId, job.joint.jointId)} target="_blank">
            {text('sheet')}
          </Link>
        </li>
      </ul>
    </nav>
  );
}
