import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useSiteCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { TextField } from '../../ui/text-field.tsx';

interface Props {
  /** events whose whole payload is the reason */
  readonly type: 'qualification-withdrawn' | 'person-erased' | 'account-closed' | 'role-ended';
  readonly subjectId: string;
  readonly title: string;
  readonly detail: string;
  readonly sendLabel: string;
  readonly onClose: () => void;
}

/** Ends something of the site, with the reason that stays in the record. */
export function ReasonDialog({ type, subjectId, title, detail, sendLabel, onClose }: Props) {
  const text = useText('people');
  const end = useSiteCommand(type);
  const [reason, setReason] = useState('');
  return (
    <FormDialog
      title={title}
      description={detail}
      sendLabel={sendLabel}
      missing={reason.trim() === '' ? text('reason-needed') : undefined}
      busy={end.isPending}
      error={end.error}
      onSend={() => end.mutate({ subjectId, payload: { reason } }, { onSuccess: onClose })}
      onClose={onClose}
    >
      <TextField label={text('reason')} lines={2} value={reason} onChange={setReason} />
    </FormDialog>
  );
}
