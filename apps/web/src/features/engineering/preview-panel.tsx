import type { TargetPreview } from '@seatwell/contract';
import type { TargetEvidence } from '@seatwell/workflow';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Notice } from '../../ui/notice.tsx';
import { NoWindow } from '../joint/no-window.tsx';
import { NotCheckedList } from '../joint/not-checked-list.tsx';
import { WindowView } from '../joint/target-panel.tsx';
import { useLimitName } from '../joint/use-limit-name.ts';
import { ComputedPlan } from './computed-plan.tsx';
import styles from './engineering.module.css';
import { TensioningPlan } from './tensioning-plan.tsx';
import { useElongationWords } from './use-elongation-words.ts';

/** What the tool is set to at the full target, in words: a torque, or the pressures of the groups of a tensioner. */
export function useSetTo(): (preview: TargetPreview | undefined) => string {
  const format = useFormat();
  return (preview) => {
    const { tensioning, elongation } = (preview?.target ?? {}) as Pick<TargetEvidence, 'tensioning' | 'elongation'>;
    const pressures = tensioning?.passes.at(-1)?.groupPressures_MPa;
    if (elongation) return format.quantity('gap', elongation.elongation_mm);
    return pressures
      ? pressures.map((pressure_MPa) => format.quantity('pressure', pressure_MPa)).join(' / ')
      : format.quantity('torque', preview?.target.torque_Nm ?? null);
  };
}

/** What approval would keep: the target, its window, what governs, the set value of each pass. */
export function PreviewPanel({ preview }: { preview: TargetPreview }) {
  const text = useText('engineering');
  const format = useFormat();
  const limitName = useLimitName();
  const { target, answer } = preview;
  const window = answer?.window;
  // The answer is the folded target; the contract leaves its later parts open.
  const { tightening, tensioning, notChecked, elongation } = target as unknown as Pick<
    TargetEvidence,
    'tightening' | 'tensioning' | 'notChecked' | 'elongation'
  >;
  const setTo = useSetTo()(preview);
  const elongationWords = useElongationWords();
  return (
    <section className={styles.form}>
      <h2>{text('comes-to', { torque: setTo })}</h2>
      {window && <NoWindow window={window} />}
      {window?.open && !target.insideWindow && (
        <Notice kind="attention" title={text('outside')}>
          <p>{text('outside-detail')}</p>
        </Notice>
      )}
      <KeyValues
        items={[
          { name: text('bolt-stress'), value: format.quantity('stress', target.boltStress_MPa) },
          { name: text('bolt-load'), value: format.quantity('load', target.boltLoad_N) },
          { name: text('governs'), value: target.governedBy === null ? '–' : limitName(target.governedBy) },
          // With a tensioner the table below gives every group; one pressure a pass would mislead.
          ...(tensioning
            ? []
            : [
                {
                  name: text('passes'),
                  value: target.passes
                    .map(
                      (pass) =>
                        `${format.percent(pass.percent / 100)}: ${
                          pass.elongation_mm !== undefined
                            ? format.quantity('gap', pass.elongation_mm)
                            : pass.pressure_MPa === null
                              ? format.quantity('torque', pass.torque_Nm)
                              : `${pass.torque_Nm === null ? '' : `${format.quantity('torque', pass.torque_Nm)}, `}${format.quantity('pressure', pass.pressure_MPa)}`
                        }`,
                    )
                    .join(' · '),
                },
              ]),
          ...(elongation ? [{ name: text('elongation'), value: elongationWords(elongation) }] : []),
          { name: text('sources'), value: target.sources.join('; ') },
        ]}
      />
      {tightening?.way === 'computed-loads' && <ComputedPlan plan={tightening} />}
      {tensioning && <TensioningPlan plan={tensioning} />}
      {answer && <WindowView answer={answer} />}
      <NotCheckedList list={notChecked} />
    </section>
  );
}
