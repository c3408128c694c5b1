import type { Retention } from '@seatwell/contract';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { useOperatorAction } from './use-operator-action.ts';

const within = (value: number | undefined, most: number): value is number =>
  value !== undefined && Number.isInteger(value) && value >= 1 && value <= most;

/** Sets how long sessions, addresses of wrong sign-ins and names of those who left are kept. */
export function RetentionDialog({ retention, onClose }: { retention: Retention; onClose: () => void }) {
  const text = useText('operating');
  const save = useOperatorAction();
  const [sessionHours, setSessionHours] = useState<number | undefined>(retention.sessionHours);
  const [signInDays, setSignInDays] = useState<number | undefined>(retention.signInDays);
  const [leaverDays, setLeaverDays] = useState<number | undefined>(retention.leaverDays ?? undefined);
  const complete =
    within(sessionHours, 72) && within(signInDays, 365) && (leaverDays === undefined || within(leaverDays, 3650));
  const send = () =>
    save.mutate(
      { path: '/retention', method: 'PUT', body: { sessionHours, signInDays, leaverDays: leaverDays ?? null } },
      { onSuccess: onClose },
    );
  return (
    <FormDialog
      title={text('people-kept')}
      description={text('keep-detail')}
      sendLabel={text('save')}
      missing={complete ? undefined : text('keep-missing')}
      busy={save.isPending}
      error={save.error}
      onSend={send}
      onClose={onClose}
    >
      <NumberField
        label={text('session-hours')}
        value={sessionHours}
        onChange={setSessionHours}
        least={1}
        most={72}
        decimals={0}
      />
      <NumberField
        label={text('sign-in-days')}
        value={signInDays}
        onChange={setSignInDays}
        least={1}
        most={365}
        decimals={0}
      />
      <NumberField
        label={text('leaver-days')}
        hint={text('leaver-days-hint')}
        value={leaverDays}
        onChange={setLeaverDays}
        least={1}
        most={3650}
        decimals={0}
        optional
      />
    </FormDialog>
  );
}
