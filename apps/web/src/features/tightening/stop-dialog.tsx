import { useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { RunningPass } from './draft.ts';
import { type BoltStep, lastBoltOf } from './pass-steps.ts';

const reasons = ['shift', 'weather', 'tool', 'alarm', 'other'] as const;

export interface StopDialogProps {
  readonly open: boolean;
  readonly onOpenChange: (open: boolean) => void;
  readonly running: RunningPass;
  readonly steps: readonly BoltStep[];
  readonly onStop: (why: string | null) => void;
}

/** Leaving a joint in the middle: it becomes part tight, with the last bolt, who left it and why. */
export function StopDialog({ open, onOpenChange, running, steps, onStop }: StopDialogProps) {
  const text = useText('tightening');
  const format = useFormat();
  const [reason, setReason] = useState<(typeof reasons)[number] | ''>('');
  const [words, setWords] = useState('');
  const last = lastBoltOf(steps, running.stepsDone);
  const nothingDone = running.kind === 'pass' && running.stepsDone === 0;
  const isPass = running.kind === 'pass';
  const ask = isPass && !nothingDone;
  let missing: string | undefined;
  if (ask && reason === '') missing = text('missing-why');
  else if (ask && reason === 'other' && words.trim() === '') missing = text('missing-why-words');
  const why =
    reason === ''
      ? ''
      : reason === 'other'
        ? words.trim()
        : [text(`why-${reason}`), words.trim()].filter(Boolean).join(': ');
  return (
    <Dialog
      open={open}
      onOpenChange={onOpenChange}
      title={text(ask ? 'stop-title' : 'leave-title')}
      actions={
        <>
          <Button onClick={() => onOpenChange(false)}>{text('go-on')}</Button>
          <Button kind={ask ? 'stop' : 'primary'} disabledReason={missing} onClick={() => onStop(ask ? why : null)}>
            {text(ask ? 'leave-part-tight' : 'leave')}
          </Button>
        </>
      }
    >
      {nothingDone && <p>{text('leave-nothing-done')}</p>}
      {!isPass && <p>{text(running.kind === 'final-round' ? 'leave-final-round' : 'leave-relaxation')}</p>}
      {ask && (
        <>
          <p>
            {text('stop-means', {
              pass: format.count(running.pass),
              bolt: last === null ? text('none') : String(last),
            })}
          </p>
          <RadioCards
            label={text('why')}
            value={reason}
            options={reasons.map((value) => ({ value, label: text(`why-${value}`) }))}
            onChange={setReason}
          />
          <TextField label={text('why-words')} optional={reason !== 'other'} value={words} onChange={setWords} />
        </>
      )}
    </Dialog>
  );
}
