import type { Retention } from '@seatwell/contract';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { useOperatorAction } from './use-operator-action.ts';

const longest = { sessionHours: 72, signInDays: 365, leaverDays: 3650 } as const;
type Kept = keyof typeof longest;

const within = (kept: Kept, value: number | undefined): boolean =>
  value !== undefined && Number.isInteger(value) && value >= 1 && value <= longest[kept];

/** Sets how long sessions, addresses of wrong sign-ins and names of those who left are kept. */
export function RetentionDialog({ retention, onClose }: { retention: Retention; onClose: () => void }) {
  const text = useText('operating');
  const save = useOperatorAction();
  const [times, setTimes] = useState<Readonly<Record<Kept, number | undefined>>>({
    sessionHours: retention.sessionHours,
    signInDays: retention.signInDays,
    leaverDays: retention.leaverDays ?? undefined,
  });
  const complete =
    within('sessionHours', times.sessionHours) &&
    within('signInDays', times.signInDays) &&
    (times.leaverDays === undefined || within('leaverDays', times.leaverDays));
  const field = (kept: Kept) => ({
    value: times[kept],
    onChange: (value: number | undefined) => setTimes((current) => ({ ...current, [kept]: value })),
    least: 1,
    most: longest[kept],
    decimals: 0,
  });
  const send = () =>
    save.mutate(
      { path: '/retention', method: 'PUT', body: { ...times, leaverDays: times.leaverDays ?? null } },
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
      <NumberField label={text('session-hours')} {...field('sessionHours')} />
      <NumberField label={text('sign-in-days')} {...field('signInDays')} />
      <NumberField label={text('leaver-days')} hint={text('leaver-days-hint')} optional {...field('leaverDays')} />
    </FormDialog>
  );
}
