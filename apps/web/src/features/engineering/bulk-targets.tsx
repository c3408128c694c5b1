import { useState } from 'react';
import { useListCommand } from '../../app/use-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { ListDialog } from '../register/list-dialog.tsx';
import type { SelectedJoint } from '../register/selection.ts';
import { SignedList } from '../register/signed-list.tsx';
import { emptyTarget, targetPayload } from './target-draft.ts';
import { TargetFields } from './target-fields.tsx';

/**
 * One target decision over many joints under one signature: each joint is calculated by itself, and one that has
 * no window or does not fit is left out and named with its reason.
 */
export function BulkTargets({ joints, onClose }: { joints: readonly SelectedJoint[]; onClose: () => void }) {
  const text = useText('engineering');
  const shutdownId = useShutdownId();
  const approve = useListCommand('target-approved');
  const [draft, setDraft] = useState(emptyTarget);
  const [signing, setSigning] = useState(false);
  const read = targetPayload(draft);
  if (signing && 'payload' in read) {
    return (
      <SignedList
        title={text('targets-title', { count: joints.length })}
        meaning={text('targets-meaning', { basis: text(`basis-${draft.basis}`) })}
        signLabel={text('approve-targets')}
        roles={['engineer']}
        joints={joints}
        command={approve}
        subjectId={shutdownId}
        payload={read.payload}
        onClose={onClose}
      />
    );
  }
  return (
    <ListDialog
      title={text('targets-title', { count: joints.length })}
      joints={joints}
      answer={undefined}
      error={null}
      busy={false}
      sendLabel={text('go-on-to-signing')}
      missing={'missing' in read ? text(read.missing) : undefined}
      onSend={() => setSigning(true)}
      onClose={onClose}
    >
      <TargetFields value={draft} onChange={setDraft} />
    </ListDialog>
  );
}
