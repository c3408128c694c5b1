import { ApiProblem } from '../../app/api-problem.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { outbox } from '../../offline/outbox.ts';
import type { QueuedFact } from '../../offline/queued-fact.ts';
import { useOutbox } from '../../offline/use-outbox.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { FactProblem } from '../work/fact-problem.tsx';
import styles from './tightening.module.css';

/** Whether what was done has reached the record, and what to do where it was refused. */
export function SendState({ facts, kept }: { facts: readonly QueuedFact[]; kept: boolean }) {
  const text = useText('tightening');
  const format = useFormat();
  const { sending, silent, kept: outboxKept } = useOutbox();
  const refused = facts.find((fact) => fact.state === 'refused');
  if (refused?.problem) {
    return (
      <div className={styles.setup}>
        <FactProblem
          error={new ApiProblem(refused.problem)}
          onKeepForReview={() => void outbox.sendAsAlreadyDone(refused.eventId)}
        />
        <p>{text('withdraw-means')}</p>
        <Button onClick={() => void outbox.withdraw(refused.eventId)}>{text('withdraw')}</Button>
      </div>
    );
  }
  return (
    <div role="status" className={styles.pass}>
      {facts.length > 0 && silent && (
        <p className={styles.waiting}>
          {text('waiting-to-send', { count: facts.length, facts: format.count(facts.length) })}
        </p>
      )}
      {facts.length > 0 && sending && <p className={styles.soft}>{text('sending')}</p>}
      {!(kept && outboxKept) && <p className={styles.waiting}>{text('not-kept')}</p>}
    </div>
  );
}
