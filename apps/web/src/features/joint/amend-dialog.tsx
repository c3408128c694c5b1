import type { HistoryEntry, JointPage, MakeAnswer } from '@seatwell/contract';
import { lazy, Suspense } from 'react';
import { useCommand } from '../../app/use-command.ts';
import { useRuleWords } from '../../app/use-rule-words.ts';
import { useText } from '../../texts/text-provider.tsx';
import { SettleDialog } from '../reviews/settle-dialog.tsx';
import type { Amendment } from './amendments.ts';
import { DecisionDialog } from './decision-dialog.tsx';
import { ruleSentences } from './rule-sentences.ts';
import { useEventSentence } from './use-event-sentence.ts';

// What an event may say is only needed to correct one.
const CorrectDialog = lazy(() => import('./correct-dialog.tsx').then((m) => ({ default: m.CorrectDialog })));

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly entry: HistoryEntry;
  readonly amendment: Amendment;
  readonly onClose: () => void;
}

/** Says something about an earlier event; both stay visible. */
export function AmendDialog(props: Props) {
  if (props.amendment === 'correct') {
    return (
      <Suspense fallback={null}>
        <CorrectDialog {...props} />
      </Suspense>
    );
  }
  return props.amendment === 'revoke' ? <RevokeDialog {...props} /> : <SettleEntry {...props} />;
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

function SettleEntry({ page, entry, onClose }: Props) {
  const sentence = useEventSentence();
  const ruleWords = useRuleWords();
  const { jointId, version } = page.joint;
  return (
    <SettleDialog
      subject={{ subjectId: jointId, makeId: entry.makeId, version }}
      eventId={entry.eventId}
      what={sentence(entry)}
      rules={ruleSentences(ruleWords, entry.reviewCodes)}
      onClose={onClose}
    />
  );
}
