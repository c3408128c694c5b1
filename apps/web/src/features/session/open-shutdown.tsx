import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { newId, sendCommand } from '../../app/send-command.ts';
import { sessionQuery, useMe } from '../../app/session.ts';
import { useGo } from '../../app/use-go.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './session.module.css';
import { ShiftsField } from './shifts-field.tsx';
import { TimeZoneField } from './time-zone-field.tsx';

/** Opens a shutdown: what its dates and stresses mean is settled here once. */
export function OpenShutdown({ onCancel }: { onCancel: () => void }) {
  const text = useText('session');
  const { site } = useMe();
  const queries = useQueryClient();
  const go = useGo();
  const [shutdownId] = useState(newId);
  const [name, setName] = useState('');
  const [startsOn, setStartsOn] = useState('');
  const [endsOn, setEndsOn] = useState('');
  const [timeZone, setTimeZone] = useState(site.timeZone);
  const [units, setUnits] = useState(site.units);
  const [areaBasis, setAreaBasis] = useState<'tensile' | 'root'>('tensile');
  const [shifts, setShifts] = useState([
    { name: text('shift-day'), starts: '06:00', ends: '18:00' },
    { name: text('shift-night'), starts: '18:00', ends: '06:00' },
  ]);
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<unknown>();
  const [tried, setTried] = useState(false);

  const needed = (value: string) => (tried && value.trim() === '' ? text('needed') : undefined);
  const endsBefore = startsOn !== '' && endsOn !== '' && endsOn < startsOn;
  const complete = name.trim() !== '' && startsOn !== '' && endsOn !== '' && !endsBefore;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (!complete || busy) return;
    setBusy(true);
    try {
      await sendCommand(shutdownId, 'shutdown-opened', {
        subjectId: shutdownId,
        payload: { name, timeZone, startsOn, endsOn, shifts, units, areaBasis },
      });
      await queries.fetchQuery({ ...sessionQuery, staleTime: 0 });
      go(addresses.setup(shutdownId));
    } catch (error) {
      setFailed(error);
      setBusy(false);
    }
  };

  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)} noValidate>
      <TextField label={text('shutdown-name')} value={name} onChange={setName} error={needed(name)} />
      <div className={styles.pair}>
        <DateField label={text('starts-on')} value={startsOn} onChange={setStartsOn} error={needed(startsOn)} />
        <DateField
          label={text('ends-on')}
          value={endsOn}
          onChange={setEndsOn}
          error={endsBefore ? text('ends-before') : needed(endsOn)}
        />
      </div>
      <TimeZoneField value={timeZone} onChange={setTimeZone} />
      <ShiftsField value={shifts} onChange={setShifts} />
      <Select
        label={text('units')}
        value={units}
        onChange={setUnits}
        options={(['SI', 'US'] as const).map((value) => ({ value, label: text(`units-${value}`) }))}
      />
      <RadioCards
        label={text('area-basis')}
        value={areaBasis}
        onChange={setAreaBasis}
        options={(['tensile', 'root'] as const).map((value) => ({
          value,
          label: text(`area-${value}`),
          detail: text(`area-${value}-detail`),
        }))}
      />
      <ErrorNotice error={failed} />
      <div className={styles.pair}>
        <Button onClick={onCancel}>{text('cancel')}</Button>
        <Button kind="primary" type="submit" busy={busy}>
          {text('open-shutdown')}
        </Button>
      </div>
    </form>
  );
}
