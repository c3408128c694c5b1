import type { ShutdownPayload } from '@seatwell/contract';
import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { DecisionDialog } from '../joint/decision-dialog.tsx';

type Outcome = ShutdownPayload<'review-settled'>['outcome'];
const outcomes = ['accept', 'accept-with-punch-item', 'reject-as-not-done'] as const satisfies readonly Outcome[];

interface Props {
  /** the joint or the pack that the fact is about, and the version of it that the signer sees */
  readonly subject: { readonly subjectId: string; readonly makeId: string | null; readonly version: number | null };
  readonly eventId: string;
  readonly what: string;
  readonly rules: string;
  readonly onClose: () => void;
}

/** Deals with a fact that was kept although a rule failed: it counts, with or without a punch item, or it never was. */
export function SettleDialog({ subject, eventId, what, rules, onClose }: Props) {
  const text = useText('joint');
  const settle = useCommand('review-settled');
  const [outcome, setOutcome] = useState<Outcome | ''>('');
  return (
    <DecisionDialog
      title={text('settle-title')}
      description={text('settle-detail', { what, rules })}
      sendLabel={text('sign')}
      reasonLabel={text('reason')}
      meaning={text('settle-meaning', { what, outcome: outcome === '' ? '' : text(`outcome-${outcome}`) })}
      roles={['inspector', 'engineer']}
      missing={outcome === '' ? text('outcome-needed') : undefined}
      busy={settle.isPending}
      error={settle.error}
      onClose={onClose}
      onSend={({ reason, signature }) => {
        if (outcome === '') return;
        const punchId = outcome === 'accept-with-punch-item' ? newId() : null;
        settle.mutate(
          {
            subjectId: subject.subjectId,
            makeId: subject.makeId,
            versionSeen: subject.version,
            signature,
            payload: { eventId, outcome, reason, punchId },
          },
          { onSuccess: onClose },
        );
      }}
    >
      <RadioCards
        label={text('outcome')}
        value={outcome}
        onChange={setOutcome}
        options={outcomes.map((value) => ({
          value,
          label: text(`outcome-${value}`),
          detail: text(`outcome-${value}-detail`),
        }))}
      />
    </DecisionDialog>
  );
}
