import type { PunchRow } from '@seatwell/contract';
import { useState } from 'react';
import { useProblemDetails } from '../../app/error-notice.tsx';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useSigner } from '../../app/sign.ts';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { SignDialog } from '../../ui/sign-dialog.tsx';
import { TextField } from '../../ui/text-field.tsx';

/** Closes a punch item: first how it was dealt with, then the signature under it. */
export function ClosePunchDialog({ item, onClose }: { item: PunchRow; onClose: () => void }) {
  const text = useText('punch');
  const signer = useSigner('inspector');
  const close = useCommand('punch-closed');
  const problem = useProblemDetails()(close.error);
  const [how, setHow] = useState('');
  const [signing, setSigning] = useState(false);
  if (!signing) {
    return (
      <FormDialog
        title={text('close-title', { category: item.category })}
        description={item.text}
        sendLabel={text('go-on')}
        missing={how.trim() === '' ? text('how-needed') : undefined}
        busy={false}
        error={undefined}
        onSend={() => setSigning(true)}
        onClose={onClose}
      >
        <TextField label={text('how')} lines={3} value={how} onChange={setHow} />
      </FormDialog>
    );
  }
  const meaning = text('close-meaning', { how });
  return (
    <SignDialog
      open
      onOpenChange={(open) => open || onClose()}
      title={text('close-title', { category: item.category })}
      meaning={meaning}
      signer={signer}
      items={[{ id: item.punchId, label: item.text, ...(item.joint ? { detail: item.joint.tag } : {}) }]}
      signLabel={text('sign-close')}
      busy={close.isPending}
      problem={problem}
      onSign={({ secret }) =>
        close.mutate(
          { subjectId: item.punchId, signature: { secret, meaning }, payload: { how } },
          { onSuccess: onClose },
        )
      }
    />
  );
}
