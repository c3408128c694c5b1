import { passCountOf } from '@seatwell/workflow';
import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { clockOffset_ms } from '../../app/clock-offset.ts';
import { toolsQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useGo } from '../../app/use-go.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useQueuedOn } from '../../offline/use-outbox.ts';
import { useText } from '../../texts/text-provider.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Link } from '../../ui/link.tsx';
import { useDocumentTitle } from '../../ui/use-document-title.ts';
import { type Job, useJob } from '../work/job.ts';
import { nextPosition, type Position, type TighteningDraft, type WaitingFact } from './draft.ts';
import { AllTightened, NotToTighten, Stale } from './endings.tsx';
import { finalRound, finishedPass, interruptedPass, relaxationPass } from './facts.ts';
import { RunningView } from './running-view.tsx';
import { SendState } from './send-state.tsx';
import { SetupPanel } from './setup-panel.tsx';
import styles from './tightening.module.css';
import { useDraft } from './use-draft.ts';
import { usePlan } from './use-plan.ts';
import { useWakeLock } from './use-wake-lock.ts';

/** Tightening one joint, full screen. */
export function TightenPage() {
  const text = useText('tightening');
  const job = useJob();
  if (!job) return <EmptyState title={text('no-make')} />;
  return <Tightening key={job.make.makeId} job={job} />;
}

function Tightening({ job }: { job: Job }) {
  const text = useText('tightening');
  const go = useGo();
  const trade = useTrade();
  useDocumentTitle(job.joint.tag);
  const { data: tools } = useSuspenseQuery(toolsQuery);
  const { draft, change, say, facts: unsent, kept } = useDraft(job);
  const plan = usePlan(job);
  const onJoint = useQueuedOn(job.joint.jointId);
  const position = positionOf(job, draft, onJoint.findLast((fact) => !unsent.includes(fact))?.type === 'nipped-up');
  const { running } = draft;
  const fits =
    running !== null && position !== null && running.kind === position.kind && running.pass === position.pass;
  useWakeLock(fits);

  const round = running?.kind === 'pass' ? plan?.plan?.passes[running.pass - 1] : plan?.plan?.round;
  const steps = round?.steps ?? [];
  const said = () => ({ eventId: newId(), at: new Date().toISOString(), clockOffset_ms: clockOffset_ms() });
  const back = addresses.work(job.shutdownId, job.joint.jointId);
  const finish = (nutsMoved: number) => {
    if (!running) return;
    if (running.kind === 'pass') say(finishedPass(running, steps, said()));
    else if (running.kind === 'final-round') say(finalRound(running, said()));
    else say(relaxationPass(running, nutsMoved, said()));
  };
  const stop = (why: string | null) => {
    if (running && why !== null) say(interruptedPass(running, steps, why, said()));
    else {
      change({ kind: 'drop' });
      go(back);
    }
  };
  const { flange } = job.joint.specification;
  const facts = [
    trade.flange(flange.size, flange.rating),
    trade.bolts(job.joint.bolting?.count ?? null, job.joint.bolting?.thread ?? null),
    job.joint.whereabouts.bolt1At === null ? null : text('bolt-1-at', { place: job.joint.whereabouts.bolt1At }),
  ].filter(Boolean);

  return (
    <section className={styles.screen} aria-labelledby="tightening-tag">
      <header className={styles.head}>
        <div>
          <h1 id="tightening-tag">{job.joint.tag}</h1>
          <p className={styles.facts}>{facts.join(' · ')}</p>
        </div>
        <Link href={back} className={styles.leave}>
          {text(running ? 'close-keeps' : 'close')}
        </Link>
      </header>
      <div className={styles.inner}>
        <SendState facts={unsent} kept={kept} />
      </div>
      {plan === null || plan.refusal !== null || plan.plan === null ? (
        <NotToTighten job={job} reason={plan?.refusal ?? text('missing-procedure')} />
      ) : position === null && running === null ? (
        <AllTightened job={job} waiting={draft.waiting} />
      ) : running !== null && fits ? (
        <RunningView
          job={job}
          plan={plan.plan}
          steps={steps}
          running={running}
          onStepDone={() => change({ kind: 'step-done', stepCount: steps.length })}
          onUndo={() => change({ kind: 'undo' })}
          onAgain={() => change({ kind: 'round-again' })}
          onFinish={finish}
          onStop={stop}
        />
      ) : running !== null ? (
        <Stale running={running} onDrop={() => change({ kind: 'drop' })} />
      ) : (
        position && (
          <SetupPanel
            key={`${position.kind} ${position.pass} ${draft.waiting.length}`}
            job={job}
            position={position}
            draft={draft}
            tools={tools.rows}
            onBegin={(begun) => change({ kind: 'begin', running: begun })}
          />
        )
      )}
    </section>
  );
}

function positionOf(job: Job, draft: TighteningDraft, nippedUpHere: boolean): Position | null {
  const { procedure } = job.state;
  if (!procedure) return null;
  // Nipped up on this device, and not yet in the record: tightening begins.
  const recorded = job.make.restartFrom ?? (nippedUpHere ? { pass: 1, finalRound: false, repeats: false } : null);
  const next = nextPosition(recorded, unrecorded(job, draft.waiting), {
    passCount: passCountOf(job.state),
    finalRound: procedure.finalRound,
  });
  if (next || draft.waiting.length > 0) return next;
  return job.make.waitsFor.code === 'relaxation-pass'
    ? { kind: 'relaxation', pass: passCountOf(job.state), repeats: false }
    : null;
}

/** Facts that the record has taken while their answer was on its way are no longer waited for. */
function unrecorded(job: Job, waiting: readonly WaitingFact[]): readonly WaitingFact[] {
  const recorded = new Set(job.state.passes.map((pass) => pass.eventId));
  return waiting.filter((fact) => !recorded.has(fact.eventId));
}
