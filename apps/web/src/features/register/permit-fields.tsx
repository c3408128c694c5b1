import { useText } from '../../texts/text-provider.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './register.module.css';

export interface PermitDraft {
  readonly number: string;
  readonly isolationReference: string;
  /** local times of the device, as its picker gives them */
  readonly from: string;
  readonly until: string;
}

const localMinute = (date: Date) => {
  const shifted = new Date(date.getTime() - date.getTimezoneOffset() * 60_000);
  return shifted.toISOString().slice(0, 16);
};

/** A permit from now for twelve hours, to be corrected. */
export function emptyPermit(): PermitDraft {
  const now = new Date();
  const until = new Date(now.getTime() + 12 * 3_600_000);
  return { number: '', isolationReference: '', from: localMinute(now), until: localMinute(until) };
}

/** The text that says what a permit still lacks. */
export function permitMissing({
  number,
  from,
  until,
}: PermitDraft): 'permit-number-needed' | 'permit-ends-early' | undefined {
  if (number.trim() === '') return 'permit-number-needed';
  return from === '' || until === '' || until <= from ? 'permit-ends-early' : undefined;
}

/** The fields of a permit. */
export function PermitFields({ value, onChange }: { value: PermitDraft; onChange: (value: PermitDraft) => void }) {
  const text = useText('register');
  return (
    <>
      <div className={styles.pair}>
        <TextField
          label={text('permit-new-number')}
          value={value.number}
          onChange={(number) => onChange({ ...value, number })}
        />
        <TextField
          label={text('isolation-reference')}
          optional
          value={value.isolationReference}
          onChange={(isolationReference) => onChange({ ...value, isolationReference })}
        />
      </div>
      <div className={styles.pair}>
        <DateField
          kind="datetime-local"
          label={text('permit-valid-from')}
          value={value.from}
          onChange={(from) => onChange({ ...value, from })}
        />
        <DateField
          kind="datetime-local"
          label={text('permit-valid-until')}
          value={value.until}
          onChange={(until) => onChange({ ...value, until })}
        />
      </div>
    </>
  );
}
