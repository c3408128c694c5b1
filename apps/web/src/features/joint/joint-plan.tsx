import type { JointPage, MakeAnswer } from '@seatwell/contract';
import { type CentreLine, computedPasses, type MakeState, passCountOf } from '@seatwell/workflow';
import { useMemo } from 'react';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { BoltPlan } from '../../ui/drawing.tsx';
import { Notice } from '../../ui/notice.tsx';
import { planBolts, sequenceOf } from './plan-bolts.ts';
import { jointState } from './shown-make.ts';

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer;
  readonly state: MakeState | undefined;
}

/** The flange from its viewing side: bolts numbered as the procedure agreed, filled by the passes recorded. */
export function JointPlan({ page, make, state }: Props) {
  const text = useText('joint');
  const trade = useTrade();
  const format = useFormat();
  const joint = jointState(page);
  const boltCount = joint.bolting?.count;
  const content = make.procedure?.content;
  const sequence = useMemo(
    () => (content && boltCount !== undefined ? sequenceOf(content, boltCount) : undefined),
    [content, boltCount],
  );
  if (boltCount === undefined) {
    return (
      <Notice kind="attention" title={text('no-bolts')}>
        <p>{text('no-bolts-detail')}</p>
      </Notice>
    );
  }
  const bolts = planBolts(boltCount, sequence, state);
  const passCount = Math.max(1, state ? passCountOf(state) : (content?.passPercents.length ?? 1));
  const numbered = content?.numbering ?? 'clockwise';
  const { viewedFrom, bolt1At } = joint.whereabouts;
  return (
    <BoltPlan
      bolts={bolts.map((bolt) => ({ ...bolt, passesDone: Math.min(bolt.passesDone, passCount) }))}
      passes={passCount}
      size={400}
      title={text('plan-title', { tag: joint.tag, count: format.count(boltCount) })}
      description={text('plan-description', {
        stage: trade.word('stage', make.stage),
        numbering: text(`numbered-${numbered}`),
      })}
      centre={centreOf(make, state, format, text, joint.tag)}
      viewedFrom={
        viewedFrom === null
          ? text('viewed-unknown')
          : text(bolt1At === null ? 'viewed-from' : 'viewed-from-bolt-1', { from: viewedFrom, at: bolt1At ?? '' })
      }
    />
  );
}

function centreOf(
  make: MakeAnswer,
  state: MakeState | undefined,
  format: ReturnType<typeof useFormat>,
  text: ReturnType<typeof useText<'joint'>>,
  tag: string,
): CentreLine[] {
  const restart = make.restartFrom;
  const pass = restart && make.target?.passes[Math.min(restart.pass, make.target.passes.length) - 1];
  const torque_Nm = pass?.torque_Nm ?? make.target?.torque_Nm ?? null;
  if (torque_Nm === null) return [{ text: tag, size: 0.06 }];
  const which = !restart
    ? text('centre-target')
    : restart.finalRound
      ? text('final-round')
      : text('pass-of', { pass: format.count(restart.pass), of: format.count(restart.passCount) });
  // A pass with computed loads has several values, and none of them is the procedure's share of the target.
  const computed = restart && !restart.finalRound && state ? computedPasses(state)?.[restart.pass - 1] : undefined;
  const values = computed
    ? computed.setValues_Nm.map((value) => ({ text: format.quantity('torque', value), size: 0.055, weight: 700 }))
    : [{ text: format.quantity('torque', torque_Nm), size: 0.085, weight: 700 }];
  return [...values, { text: which, size: 0.045, tone: 'soft' }];
}
