import { useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { BoltPlan } from '../../ui/drawing.tsx';
import { ProgressBar } from '../../ui/progress-bar.tsx';
import type { Job } from '../work/job.ts';
import type { RunningPass } from './draft.ts';
import { EndOfRound } from './end-of-round.tsx';
import { groupLetter } from './group-letter.ts';
import { type BoltStep, boltsIn, type TighteningPlan } from './pass-steps.ts';
import { planBolts } from './plan-bolts.ts';
import { setOfStep } from './set-of-step.ts';
import { useDial } from './set-value.tsx';
import { StopDialog } from './stop-dialog.tsx';
import styles from './tightening.module.css';

export interface RunningViewProps {
  readonly job: Job;
  readonly plan: TighteningPlan;
  readonly steps: readonly BoltStep[];
  readonly running: RunningPass;
  readonly onStepDone: () => void;
  readonly onUndo: () => void;
  readonly onAgain: () => void;
  readonly onFinish: (nutsMoved: number) => void;
  /** with why; null = nothing was tightened yet */
  readonly onStop: (why: string | null) => void;
}

/** The bolt plan while tightening: which bolt now, which value, how far. */
export function RunningView(props: RunningViewProps) {
  const { job, plan, steps, running } = props;
  const text = useText('tightening');
  const format = useFormat();
  const [stopping, setStopping] = useState(false);
  const { set, changed, following } = setOfStep(plan, running, running.stepsDone);
  const dial = useDial()(set);
  const passCount = plan.passes.length;
  const now = steps[running.stepsDone];
  const next = steps[running.stepsDone + 1];
  const then = steps[running.stepsDone + 2];
  const named = (step: BoltStep) => step.join(', ');
  const done = boltsIn(steps, running.stepsDone);
  const total = boltsIn(steps);
  const percent = running.kind === 'pass' ? (plan.passes[running.pass - 1]?.percent ?? 100) : 100;
  const { viewedFrom } = job.joint.whereabouts;
  const called = now ? text('bolts-called', { count: now.length, bolts: named(now) }) : '';
  const round =
    plan.byGroups && running.kind !== 'pass' ? (`groups-${running.kind}` as const) : (`round-${running.kind}` as const);
  const label = text(round, {
    pass: format.count(running.pass),
    of: format.count(passCount),
    percent: format.percent(percent / 100),
    round: format.count(running.rounds),
  });
  return (
    <div className={styles.running}>
      <div className={`${styles.pass} ${styles.inner}`}>
        <ProgressBar
          label={label}
          valueText={text('bolts-done', { done: format.count(done), total: format.count(total) })}
          done={running.kind === 'pass' ? (running.pass - 1) * steps.length + running.stepsDone : running.stepsDone}
          total={running.kind === 'pass' ? passCount * steps.length : steps.length}
          steps={running.kind === 'pass' ? passCount : 1}
        />
      </div>
      <div className={styles.plan}>
        <BoltPlan
          size={360}
          passes={passCount + 1}
          title={now ? text('plan-title', { now: named(now), next: next ? named(next) : text('none') }) : label}
          bolts={planBolts(plan, steps, running)}
          centre={[
            { text: called, size: now && now.length > 2 ? 0.045 : 0.065, tone: 'accent' },
            { text: dial.number, size: dial.number.length > 5 ? 0.13 : 0.17, weight: 720 },
            { text: dial.unit, size: 0.055, tone: 'soft', weight: 500 },
          ]}
          viewedFrom={viewedFrom === null ? text('viewing-side-missing') : text('viewed-from', { side: viewedFrom })}
        />
      </div>
      <footer className={`${styles.foot} ${styles.inner}`}>
        {now ? (
          <>
            {plan.byGroups && (
              <p className={styles.setAnew} role="status">
                {text(running.kind === 'pass' ? 'tension-group' : 'check-group', {
                  group: groupLetter(running.stepsDone),
                  value: `${dial.number} ${dial.unit}`,
                })}
              </p>
            )}
            {changed && !plan.byGroups && (
              <p className={styles.setAnew} role="status">
                {text('set-anew', { value: `${dial.number} ${dial.unit}`, count: following })}
              </p>
            )}
            <p>
              <span>
                {next
                  ? text(then ? 'next-then' : 'next', { next: named(next), after: then ? named(then) : '' })
                  : text('last-of-round')}
              </span>
              {running.stepsDone > 0 && (
                <button type="button" className={styles.undo} onClick={props.onUndo}>
                  {text('undo')}
                </button>
              )}
            </p>
            <Button kind="primary" size="large" wide onClick={props.onStepDone}>
              {text('bolt-done', { count: now.length, bolts: named(now) })}
            </Button>
          </>
        ) : (
          <EndOfRound running={running} onUndo={props.onUndo} onAgain={props.onAgain} onFinish={props.onFinish} />
        )}
        {now && (
          <Button size="large" wide onClick={() => setStopping(true)}>
            {text('stop-here')}
          </Button>
        )}
      </footer>
      <StopDialog
        open={stopping}
        onOpenChange={setStopping}
        running={running}
        steps={steps}
        onStop={(why) => {
          setStopping(false);
          props.onStop(why);
        }}
      />
    </div>
  );
}
