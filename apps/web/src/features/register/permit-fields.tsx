import { siteInstant, siteMinute } from '../../app/site-time.ts';
import { useText } from '../../texts/text-provider.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './register.module.css';

export interface PermitDraft {
  readonly number: string;
  readonly isolationReference: string;
  /** days and times of the site, as the picker gives them */
  readonly from: string;
  readonly until: string;
}

const usualHours = 12;

/** A permit from now for twelve hours, to be corrected; its times are the site's, wherever the device is. */
export function emptyPermit(timeZone: string, now = new Date()): PermitDraft {
  const until = new Date(now.getTime() + usualHours * 3_600_000);
  return {
    number: '',
    isolationReference: '',
    from: siteMinute(now, timeZone),
    until: siteMinute(until, timeZone),
  };
}

/** From when until when the permit is valid, as instants. */
export function permitValidity({ from, until }: PermitDraft, timeZone: string) {
  return { validFrom: siteInstant(from, timeZone), validUntil: siteInstant(until, timeZone) };
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
export function PermitFields(props: { value: PermitDraft; onChange: (value: PermitDraft) => void; timeZone: string }) {
  const { value, onChange } = props;
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
          hint={text('site-time', { zone: props.timeZone })}
          value={value.from}
          onChange={(from) => onChange({ ...value, from })}
        />
        <DateField
          kind="datetime-local"
          label={text('permit-valid-until')}
          hint={text('site-time', { zone: props.timeZone })}
          value={value.until}
          onChange={(until) => onChange({ ...value, until })}
        />
      </div>
    </>
  );
}
