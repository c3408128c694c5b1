import type { CalcTargetResponse, JointPage, MakeAnswer } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useGo } from '../../app/use-go.ts';
import { useSaid } from '../../app/use-said.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Notice } from '../../ui/notice.tsx';
import { Skeleton } from '../../ui/skeleton.tsx';
import { ComputedPlan } from '../engineering/computed-plan.tsx';
import { approvedPayload, targetPreviewQuery } from '../engineering/target-preview.ts';
import { TensioningPlan } from '../engineering/tensioning-plan.tsx';
import { useElongationWords } from '../engineering/use-elongation-words.ts';
import styles from './joint.module.css';
import { NotCheckedList } from './not-checked-list.tsx';
import { isWorkable, jointState, stateOf } from './shown-make.ts';
import { useLimitName } from './use-limit-name.ts';
import { WindowChart } from './window-chart.tsx';
import { WindowTable } from './window-table.tsx';
import { WorkingDialog } from './working-dialog.tsx';

type TargetAnswer = NonNullable<MakeAnswer['target']>;

/** What the bolts are tightened to, between which limits, what governs, and from which sources. */
export function TargetPanel({ page, make }: { page: JointPage; make: MakeAnswer }) {
  const text = useText('joint');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const go = useGo();
  const { target } = make;
  const workable = isWorkable(page, make);
  if (!target) {
    return (
      <section className={styles.block}>
        <h2>{text('no-target')}</h2>
        <p className={styles.soft}>{text('no-target-detail')}</p>
        <span>
          {workable && (
            <Button onClick={() => go(addresses.target(shutdownId, page.joint.jointId, { make: make.makeId }))}>
              {text('set-target')}
            </Button>
          )}
        </span>
      </section>
    );
  }
  const elongation = stateOf(page, make)?.target?.elongation;
  const title = [
    target.boltStress_MPa === null || target.area === null
      ? ''
      : text('target-stress', {
          stress: format.quantity('stress', target.boltStress_MPa),
          area: text(`area-${target.area}`),
        }),
    target.boltLoad_N === null ? '' : text('target-load', { load: format.quantity('load', target.boltLoad_N) }),
    target.torque_Nm === null ? '' : format.quantity('torque', target.torque_Nm),
    elongation === undefined ? '' : format.quantity('gap', elongation.elongation_mm),
  ].filter(Boolean);
  return (
    <section className={styles.block}>
      <h2>{text('target-title', { target: title.join(', ') })}</h2>
      {target.shortfallReason !== null && (
        <Notice kind="attention" title={text('outside-window')}>
          <p>{target.shortfallReason}</p>
        </Notice>
      )}
      <TargetWindow page={page} make={make} />
      <TargetEvidence page={page} make={make} target={target} />
    </section>
  );
}

/** What was kept when the target was approved: it stands whatever the inputs have become since. */
function TargetEvidence({ page, make, target }: { page: JointPage; make: MakeAnswer; target: TargetAnswer }) {
  const text = useText('joint');
  const engineering = useText('engineering');
  const limitName = useLimitName();
  const elongationWords = useElongationWords();
  const kept = stateOf(page, make)?.target;
  const items = [
    { name: text('governs'), value: target.governedBy === null ? '' : limitName(target.governedBy) },
    {
      name: text('basis'),
      value: [
        text(`basis-${target.basis}`),
        target.basis === 'makers-torque' || !kept ? '' : text('calc-version', { version: kept.calcVersion }),
      ]
        .filter(Boolean)
        .join(' '),
    },
    {
      name: text('tightened'),
      value: kept?.tightening ? text(`tightened-${kept.tightening.way}`) : '',
    },
    { name: engineering('elongation'), value: kept?.elongation ? elongationWords(kept.elongation) : '' },
    { name: text('sources'), value: [...new Set(target.sources)].join('; ') },
  ];
  const plan = kept?.tightening;
  return (
    <>
      <KeyValues items={items.filter((item) => item.value !== '')} />
      <NotCheckedList list={kept?.notChecked} />
      {plan?.way === 'computed-loads' && <ComputedPlan plan={plan} />}
      {kept?.tensioning && <TensioningPlan plan={kept.tensioning} />}
    </>
  );
}

/** The window of a calculated target, as it comes out with the inputs as they are now. */
function TargetWindow({ page, make }: { page: JointPage; make: MakeAnswer }) {
  const shutdownId = useShutdownId();
  const text = useText('joint');
  const payload = approvedPayload(page, make.makeId);
  const calculated = make.target?.basis !== 'makers-torque' && payload !== undefined;
  const joint = jointState(page);
  const preview = useQuery({
    ...targetPreviewQuery(shutdownId, joint.jointId, make.makeId, payload),
    enabled: calculated,
  });
  if (!calculated) return null;
  if (preview.error) {
    return (
      <>
        <p className={styles.soft}>{text('window-refused')}</p>
        <ErrorNotice error={preview.error} />
      </>
    );
  }
  if (!preview.data) return <Skeleton lines={6} />;
  return preview.data.answer ? <WindowView answer={preview.data.answer} /> : null;
}

/** The window as a chart or as a table, and its working. */
export function WindowView({ answer }: { answer: CalcTargetResponse }) {
  const text = useText('joint');
  const [asTable, setAsTable] = useState(false);
  const [working, setWorking] = useState(false);
  const said = useSaid('calculation', useLimitName());
  return (
    <>
      {asTable ? <WindowTable answer={answer} /> : <WindowChart answer={answer} />}
      <span className={styles.actions}>
        <Button kind="quiet" onClick={() => setAsTable(!asTable)}>
          {text(asTable ? 'show-as-chart' : 'show-as-table')}
        </Button>
        {answer.working !== undefined && (
          <Button kind="quiet" onClick={() => setWorking(true)}>
            {text('working-and-sources')}
          </Button>
        )}
      </span>
      {answer.warnings.length > 0 && (
        <ul>
          {answer.warnings.map((warning) => (
            <li key={`${warning.code} ${warning.message}`}>{said(warning)}</li>
          ))}
        </ul>
      )}
      {working && <WorkingDialog answer={answer} onClose={() => setWorking(false)} />}
    </>
  );
}
