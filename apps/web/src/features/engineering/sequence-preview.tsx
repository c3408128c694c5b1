import { CalcRefusal, tighteningSequence } from '@seatwell/calc';
import type { ProcedureContent } from '@seatwell/contract';
import { useDeferredValue, useState } from 'react';
import { useSaid } from '../../app/use-said.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { BoltPlan } from '../../ui/drawing.tsx';
import { Notice } from '../../ui/notice.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SequenceTable } from '../calculator/sequence-table.tsx';
import styles from './engineering.module.css';

/** What the procedure comes to on a flange of so many bolts: its plan and every pass in the numbering agreed. */
export function SequencePreview({ content }: { content: ProcedureContent }) {
  const text = useText('engineering');
  const said = useSaid('calculation');
  const format = useFormat();
  const [boltCount, setBoltCount] = useState<number | undefined>(16);
  const answer = sequenceFor(useDeferredValue(content), boltCount);
  return (
    <section className={styles.form} aria-label={text('preview')}>
      <h2>{text('preview')}</h2>
      <div className={styles.plan}>
        <NumberField
          label={text('preview-bolts')}
          least={3}
          most={400}
          decimals={0}
          value={boltCount}
          onChange={setBoltCount}
        />
      </div>
      {'refused' in answer ? (
        <Notice kind="attention" title={text('preview-not-possible')}>
          <p>{answer.refused.map((each) => said(each)).join(' ')}</p>
        </Notice>
      ) : (
        <>
          <div className={styles.plan}>
            <BoltPlan
              bolts={answer.positions.map(({ label, clockwiseIndex }) => ({ label, clockwiseIndex, passesDone: 0 }))}
              passes={1}
              size={380}
              title={text('preview-plan', { count: answer.positions.length })}
              viewedFrom={text('viewing-side')}
            />
          </div>
          <SequenceTable
            caption={text('preview-passes', { moves: format.count(answer.moves) })}
            passes={answer.passes}
          />
          {answer.warnings.map((warning) => (
            <p key={warning.code}>{said(warning)}</p>
          ))}
        </>
      )}
    </section>
  );
}

function sequenceFor(content: ProcedureContent, boltCount: number | undefined) {
  try {
    return tighteningSequence({
      boltCount: boltCount ?? Number.NaN,
      pattern: content.pattern,
      numbering: content.numbering,
      tools: content.tools,
      ...(content.group === null ? {} : { group: content.group }),
      passPercents: content.passPercents,
      relaxation: content.relaxationPass,
    });
  } catch (error) {
    if (error instanceof CalcRefusal) return { refused: error.errors };
    throw error;
  }
}
