import type { TighteningSequence } from '@seatwell/calc';
import { useSaid } from '../../app/use-said.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { BoltPlan } from '../../ui/drawing.tsx';
import { Notice } from '../../ui/notice.tsx';
import styles from './calculator.module.css';
import type { Inputs } from './inputs.ts';
import { SequenceTable } from './sequence-table.tsx';

interface Props {
  readonly inputs: Inputs;
  readonly sequence: TighteningSequence;
  /** set value for the middle of the plan, formatted: number and unit */
  readonly setValue: readonly [string, string] | undefined;
}

/** The bolt plan in the numbering and from the side that were chosen, and the order pass by pass. */
export function SequenceAnswer({ inputs, sequence, setValue }: Props) {
  const text = useText('calculator');
  const said = useSaid('calculation');
  const trade = useTrade();
  const format = useFormat();
  const first = sequence.order[0] ?? [];
  const second = sequence.order[1] ?? [];
  const side = inputs.side === 'other-side' ? 'other-side' : 'viewing-side';
  return (
    <section className={styles.result}>
      <h2>
        {text('plan-title', {
          pattern: trade.word('pattern', inputs.pattern ?? 'legacy'),
          moves: format.count(sequence.moves),
        })}
      </h2>
      <div className={styles.plan}>
        <BoltPlan
          size={400}
          passes={1}
          title={text('plan-label', { count: sequence.positions.length, first: first.join(' + ') })}
          viewedFrom={text(`seen-${side}`)}
          bolts={sequence.positions.map(({ label, clockwiseIndex }) => ({
            label,
            clockwiseIndex,
            passesDone: 0,
            state: first.includes(label) ? 'now' : second.includes(label) ? 'next' : undefined,
          }))}
          centre={
            setValue === undefined
              ? []
              : [
                  { text: setValue[0], size: 0.14, weight: 720 },
                  { text: setValue[1], size: 0.055, tone: 'soft', weight: 500 },
                ]
          }
        />
      </div>
      <p className={styles.soft}>{text(inputs.numbering === 'order' ? 'numbered-in-order' : 'numbered-clockwise')}</p>
      <SequenceTable caption={text('order')} passes={sequence.passes} />
      <p className={styles.soft}>{text('rounds-note')}</p>
      {sequence.warnings.length > 0 && (
        <Notice kind="info" title={text('pattern-notes')}>
          <ul>
            {sequence.warnings.map((warning) => (
              <li key={warning.code}>{said(warning)}</li>
            ))}
          </ul>
        </Notice>
      )}
    </section>
  );
}
