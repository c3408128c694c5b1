import { QUALIFIED_FOR, type QualifiedFor } from '@seatwell/contract';
import { useState } from 'react';
import { FileField } from '../../app/file-field.tsx';
import { FormDialog } from '../../app/form-dialog.tsx';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './people.module.css';

/** Records a certificate: what it qualifies for, under which scheme, from when to when. */
export function QualificationDialog({ personId, onClose }: { personId: string; onClose: () => void }) {
  const text = useText('people');
  const trade = useTrade();
  const record = useSiteCommand('qualification-recorded');
  const [qualificationId] = useState(newId);
  const [forWhat, setForWhat] = useState<readonly QualifiedFor[]>([]);
  const [scheme, setScheme] = useState('');
  const [validFrom, setValidFrom] = useState('');
  const [validThrough, setValidThrough] = useState('');
  const [certificate, setCertificate] = useState<string | null>(null);
  const endsEarly = validFrom !== '' && validThrough !== '' && validThrough < validFrom;
  const missing = forWhat.length === 0 || scheme.trim() === '' || validFrom === '' || validThrough === '' || endsEarly;
  return (
    <FormDialog
      title={text('record-qualification')}
      sendLabel={text('save')}
      missing={missing ? text('qualification-missing') : undefined}
      busy={record.isPending}
      error={record.error}
      onSend={() =>
        record.mutate(
          {
            subjectId: qualificationId,
            payload: {
              qualificationId,
              personId,
              qualifiedFor: [...forWhat],
              validFrom,
              validThrough,
              scheme,
              certificate,
            },
          },
          { onSuccess: onClose },
        )
      }
      onClose={onClose}
    >
      <fieldset className={styles.group}>
        <legend>{text('qualified-for')}</legend>
        {QUALIFIED_FOR.map((each) => (
          <Checkbox
            key={each}
            label={trade.word('qualified', each)}
            checked={forWhat.includes(each)}
            onChange={(on) => setForWhat(on ? [...forWhat, each] : forWhat.filter((other) => other !== each))}
          />
        ))}
      </fieldset>
      <TextField label={text('scheme')} hint={text('scheme-hint')} value={scheme} onChange={setScheme} />
      <div className={styles.pair}>
        <DateField label={text('valid-from')} value={validFrom} onChange={setValidFrom} />
        <DateField
          label={text('valid-through')}
          value={validThrough}
          onChange={setValidThrough}
          error={endsEarly ? text('ends-early') : undefined}
        />
      </div>
      <FileField label={text('certificate-file')} hint={text('certificate-hint')} onStored={setCertificate} />
    </FormDialog>
  );
}
