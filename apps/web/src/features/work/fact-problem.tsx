import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { Problem } from '../../ui/problem.tsx';
import { rulesStopped, useRulesProblem } from './rules-problem.ts';

export interface FactProblemProps {
  readonly error: unknown;
  readonly busy?: boolean;
  /** records it as already done; left out for what has not happened yet */
  readonly onKeepForReview?: () => void;
}

/** Why a fact was not recorded, and the way on where it is done and cannot be undone. */
export function FactProblem({ error, busy = false, onKeepForReview }: FactProblemProps) {
  const text = useText('work');
  const problem = useRulesProblem()(error);
  const [asking, setAsking] = useState(false);
  if (!problem) return null;
  const offer = onKeepForReview !== undefined && rulesStopped(error);
  return (
    <>
      <Problem
        problem={problem}
        actions={offer ? <Button onClick={() => setAsking(true)}>{text('already-done')}</Button> : undefined}
      />
      {offer && (
        <Dialog
          open={asking}
          onOpenChange={setAsking}
          title={text('already-done-title')}
          actions={
            <>
              <Button onClick={() => setAsking(false)}>{text('not-yet-done')}</Button>
              <Button
                kind="primary"
                busy={busy}
                onClick={() => {
                  setAsking(false);
                  onKeepForReview();
                }}
              >
                {text('keep-for-review')}
              </Button>
            </>
          }
        >
          <p>{text('already-done-means')}</p>
          <p>{text('already-done-then')}</p>
          <p>{text('already-done-not')}</p>
        </Dialog>
      )}
    </>
  );
}
