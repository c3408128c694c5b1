import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { JointField } from '../../app/joint-field.tsx';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { TextField } from '../../ui/text-field.tsx';

interface Props {
  readonly joint: { readonly jointId: string; readonly tag: string; readonly version: number };
  readonly onClose: () => void;
  readonly onMerged?: (intoJointId: string) => void;
}

/** Says which joint of the register a found joint is. */
export function MergeDialog({ joint, onClose, onMerged = onClose }: Props) {
  const text = useText('reviews');
  const merge = useCommand('joint-merged');
  const [intoJointId, setInto] = useState('');
  const [reason, setReason] = useState('');
  return (
    <FormDialog
      title={text('merge-of', { tag: joint.tag })}
      description={text('merge-detail')}
      sendLabel={text('merge')}
      missing={intoJointId === '' || reason.trim() === '' ? text('merge-missing') : undefined}
      busy={merge.isPending}
      error={merge.error}
      onSend={() =>
        merge.mutate(
          {
            subjectId: joint.jointId,
            versionSeen: joint.version,
            payload: { intoJointId, reason: reason.trim() },
          },
          { onSuccess: () => onMerged(intoJointId) },
        )
      }
      onClose={onClose}
    >
      <JointField label={text('merge-into')} value={intoJointId} onChange={setInto} without={joint.jointId} />
      <TextField label={text('reason')} lines={2} value={reason} onChange={setReason} />
    </FormDialog>
  );
}
