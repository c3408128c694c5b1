import { useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { newId } from '../../app/send-command.ts';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { SignRow } from './sign-row.ts';
import styles from './signing.module.css';

const hour_ms = 3_600_000;
const longest_h = 24 * 14;

/** A permit for the joints that are ticked, valid from now. */
export function PermitForm(props: { rows: readonly SignRow[]; onRecorded: (permitId: string) => void }) {
  const text = useText('signing');
  const [permitId] = useState(newId);
  const [number, setNumber] = useState('');
  const [isolation, setIsolation] = useState('');
  const [hours, setHours] = useState<number | undefined>();
  const command = useFactCommand('permit-recorded');
  let missing: string | undefined;
  if (props.rows.length === 0) missing = text('none-ticked');
  else if (number.trim() === '') missing = text('missing-permit-number');
  else if (isolation.trim() === '') missing = text('missing-isolation');
  else if (hours === undefined || hours <= 0 || hours > longest_h) missing = text('missing-validity');
  const record = () => {
    const now = Date.now();
    command.mutate(
      {
        subjectId: permitId,
        label: number.trim(),
        payload: {
          permitId,
          number: number.trim(),
          isolationReference: isolation.trim(),
          jointIds: props.rows.map((row) => row.jointId),
          validFrom: new Date(now).toISOString(),
          validUntil: new Date(now + (hours ?? 0) * hour_ms).toISOString(),
        },
      },
      { onSuccess: () => props.onRecorded(permitId) },
    );
  };
  return (
    <div className={styles.group}>
      <div className={styles.fields}>
        <TextField label={text('permit-number')} value={number} onChange={setNumber} />
        <TextField label={text('isolation')} hint={text('isolation-hint')} value={isolation} onChange={setIsolation} />
        <NumberField
          label={text('valid-hours')}
          unit="h"
          least={1}
          most={longest_h}
          value={hours}
          onChange={setHours}
        />
      </div>
      <ErrorNotice error={command.error} />
      <Button busy={command.isPending} disabledReason={missing} onClick={record}>
        {text('record-permit', { count: props.rows.length })}
      </Button>
    </div>
  );
}
