import type { ToolRow } from '@seatwell/contract';
import { useState } from 'react';
import { useProblemDetails } from '../../app/error-notice.tsx';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useSigner } from '../../app/sign.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { SignDialog } from '../../ui/sign-dialog.tsx';
import { TextField } from '../../ui/text-field.tsx';

/** Reports that a tool was found wrong: what it tightened since its last good calibration is to be looked at. */
export function FailedDialog({ tool, onClose }: { tool: ToolRow; onClose: () => void }) {
  const text = useText('tools');
  const format = useFormat();
  const signer = useSigner('inspector');
  const fail = useSiteCommand('tool-failed');
  const problem = useProblemDetails()(fail.error);
  const [foundOn, setFoundOn] = useState('');
  const [reason, setReason] = useState('');
  const [signing, setSigning] = useState(false);
  const title = text('failed-of', { tag: tool.tag });
  if (!signing) {
    return (
      <FormDialog
        title={title}
        description={text('failed-detail')}
        sendLabel={text('go-on')}
        missing={foundOn === '' || reason.trim() === '' ? text('failed-missing') : undefined}
        busy={false}
        error={undefined}
        onSend={() => setSigning(true)}
        onClose={onClose}
      >
        <DateField label={text('found-on')} value={foundOn} onChange={setFoundOn} />
        <TextField label={text('reason')} lines={3} value={reason} onChange={setReason} />
      </FormDialog>
    );
  }
  const meaning = text('failed-meaning', { tag: tool.tag, day: format.calendarDay(foundOn), reason });
  return (
    <SignDialog
      open
      onOpenChange={(open) => open || onClose()}
      title={title}
      meaning={meaning}
      signer={signer}
      items={[{ id: tool.toolId, label: tool.tag }]}
      signLabel={text('sign-failed')}
      busy={fail.isPending}
      problem={problem}
      onSign={({ secret }) =>
        fail.mutate(
          { subjectId: tool.toolId, signature: { secret, meaning }, payload: { reason, foundOn } },
          { onSuccess: onClose },
        )
      }
    />
  );
}
