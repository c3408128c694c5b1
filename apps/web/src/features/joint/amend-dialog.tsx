import type { HistoryEntry, JointPage, MakeAnswer, ShutdownPayload } from '@seatwell/contract';
import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import type { Amendment } from './amendments.ts';
import { CorrectDialog } from './correct-dialog.tsx';
import { DecisionDialog } from './decision-dialog.tsx';
import { ruleSentences } from './rule-sentences.ts';
import { useEventSentence } from './use-event-sentence.ts';

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly entry: HistoryEntry;
  readonly amendment: Amendment;
  readonly onClose: () => void;
}

/** Says something about an earlier event; both stay visible. */
export function AmendDialog(props: Props) {
  if (props.amendment === 'correct') return <CorrectDialog {...props} />;
  return props.amendment === 'revoke' ? <RevokeDialog {...props} /> : <SettleDialog {...props} />;
}

function RevokeDialog({ page, entry, onClose }: Props) {
  const text = useText('joint');
  const sentence = useEventSentence();
  const revoke = useCommand('revoked');
  return (
    <DecisionDialog
      danger
      title={text('revoke-title')}
      description={sentence(entry)}
      sendLabel={text('sign')}
      reasonLabel={text('reason')}
      meaning={text('revoke-meaning', { what: sentence(entry), tag: page.joint.tag })}
      roles={['engineer', 'inspector', 'coordinator', 'operations', 'witness']}
      busy={revoke.isPending}
      error={revoke.error}
      onClose={onClose}
      onSend={({ reason, signature }) =>
        revoke.mutate(
          {
            subjectId: page.joint.jointId,
            makeId: entry.makeId,
            versionSeen: page.joint.version,
            signature,
            payload: { eventId: entry.eventId, reason },
          },
          { onSuccess: onClose },
        )
      }
    />
  );
}

type Outcome = ShutdownPayload<'review-settled'>['outcome'];
const outcomes = ['accept', 'accept-with-punch-item', 'reject-as-not-done'] as const satisfies readonly Outcome[];

function SettleDialog({ page, entry, onClose }: Props) {
  const text = useText('joint');
  const sentence = useEventSentence();
  const settle = useCommand('review-settled');
  const [outcome, setOutcome] = useState<Outcome | ''>('');
  return (
    <DecisionDialog
      title={text('settle-title')}
      description={text('settle-detail', { what: sentence(entry), rules: ruleSentences(entry.reviewCodes) })}
      sendLabel={text('sign')}
      reasonLabel={text('reason')}
      meaning={text('settle-meaning', {
        what: sentence(entry),
        outcome: outcome === '' ? '' : text(`outcome-${outcome}`),
      })}
      roles={['inspector', 'engineer']}
      missing={outcome === '' ? text('outcome-needed') : undefined}
      busy={settle.isPending}
      error={settle.error}
      onClose={onClose}
      onSend={({ reason, signature }) => {
        if (outcome === '') return;
        settle.mutate(
          {
            subjectId: page.joint.jointId,
            makeId: entry.makeId,
            versionSeen: page.joint.version,
            signature,
            payload: {
              eventId: entry.eventId,
              outcome,
              reason,
              punchId: outcome === 'accept-with-punch-item' ? newId() : null,
            },
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
