import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import type { RunningPass } from './draft.ts';
import styles from './tightening.module.css';

export interface EndOfRoundProps {
  readonly running: RunningPass;
  readonly onUndo: () => void;
  readonly onAgain: () => void;
  readonly onFinish: (nutsMoved: number) => void;
}

/** After the last bolt: a pass is recorded, the final round asks whether a nut moved, the relaxation pass how many. */
export function EndOfRound({ running, onUndo, onAgain, onFinish }: EndOfRoundProps) {
  const text = useText('tightening');
  const [moved, setMoved] = useState<number | undefined>();
  const undo = (
    <button type="button" className={styles.undo} onClick={onUndo}>
      {text('undo')}
    </button>
  );
  if (running.kind === 'pass') {
    return (
      <div className={styles.question}>
        <p>{text('pass-at-end')}</p>
        <Button kind="primary" size="large" wide onClick={() => onFinish(0)}>
          {text('record-pass')}
        </Button>
        {undo}
      </div>
    );
  }
  if (running.kind === 'relaxation') {
    return (
      <div className={styles.question}>
        <NumberField label={text('nuts-moved')} decimals={0} least={0} value={moved} onChange={setMoved} />
        <Button
          kind="primary"
          size="large"
          wide
          disabledReason={moved === undefined ? text('missing-nuts-moved') : undefined}
          onClick={() => moved !== undefined && onFinish(moved)}
        >
          {text('record-relaxation')}
        </Button>
        {undo}
      </div>
    );
  }
  return (
    <div className={styles.question}>
      <p>{text('did-a-nut-move')}</p>
      <Button kind="primary" size="large" wide onClick={() => onFinish(0)}>
        {text('no-nut-moved')}
      </Button>
      <Button size="large" wide onClick={onAgain}>
        {text('a-nut-moved')}
      </Button>
      {undo}
    </div>
  );
}
