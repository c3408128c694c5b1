import type { JointPage, MakeAnswer } from '@seatwell/contract';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { DecisionDialog } from './decision-dialog.tsx';

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly onClose: () => void;
}

/** A joint that was handed over comes back into work: it is proven, and no longer operations'. */
export function TakeBackDialog({ page, make, onClose }: Props) {
  const text = useText('joint');
  const takeBack = useCommand('taken-back');
  if (!make) return null;
  const { jointId, tag, version } = page.joint;
  return (
    <DecisionDialog
      danger
      title={text('take-back-title', { tag })}
      description={text('take-back-detail')}
      sendLabel={text('do-taken-back')}
      reasonLabel={text('reason')}
      meaning={text('take-back-meaning', { tag })}
      roles={['coordinator', 'operations']}
      busy={takeBack.isPending}
      error={takeBack.error}
      onClose={onClose}
      onSend={({ reason, signature }) =>
        takeBack.mutate(
          { subjectId: jointId, makeId: make.makeId, versionSeen: version, signature, payload: { reason } },
          { onSuccess: onClose },
        )
      }
    />
  );
}
