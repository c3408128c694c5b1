import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { FactProblem } from '../work/fact-problem.tsx';
import type { DraftAction, TighteningDraft } from './draft.ts';
import styles from './tightening.module.css';
import type { Sender } from './use-sender.ts';

export interface SendStateProps {
  readonly draft: TighteningDraft;
  readonly sender: Sender;
  readonly kept: boolean;
  readonly change: (action: DraftAction) => void;
}

/** Whether what was done has reached the record, and what to do where it was refused. */
export function SendState({ draft, sender, kept, change }: SendStateProps) {
  const text = useText('tightening');
  const format = useFormat();
  const [first] = draft.waiting;
  if (sender.state === 'refused' && first) {
    return (
      <div className={styles.setup}>
        <FactProblem
          error={sender.error}
          onKeepForReview={() => change({ kind: 'already-done', eventId: first.eventId })}
        />
        <p>{text('withdraw-means')}</p>
        <Button
          onClick={() => {
            sender.clear();
            change({ kind: 'withdrawn', eventId: first.eventId });
          }}
        >
          {text('withdraw')}
        </Button>
      </div>
    );
  }
  return (
    <div role="status" className={styles.pass}>
      {sender.state === 'no-answer' && (
        <p className={styles.waiting}>
          {text('waiting-to-send', { count: draft.waiting.length, facts: format.count(draft.waiting.length) })}
        </p>
      )}
      {sender.state === 'sending' && <p className={styles.soft}>{text('sending')}</p>}
      {!kept && <p className={styles.waiting}>{text('not-kept')}</p>}
    </div>
  );
}
