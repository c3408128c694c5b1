import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { FieldGroup } from '../../ui/field-group.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './session.module.css';

interface Shift {
  readonly name: string;
  readonly starts: string;
  readonly ends: string;
}

const mostShifts = 4;

/** The shifts of a day; one that ends before it starts goes over midnight and belongs to the day it starts. */
export function ShiftsField({ value, onChange }: { value: readonly Shift[]; onChange: (value: Shift[]) => void }) {
  const text = useText('session');
  const change = (index: number, part: Partial<Shift>) =>
    onChange(value.map((shift, at) => (at === index ? { ...shift, ...part } : shift)));
  return (
    <FieldGroup legend={text('shifts')}>
      {value.map((shift, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: shifts have no name of their own while they are typed
        <div key={index} className={styles.pair}>
          <TextField label={text('shift-name')} value={shift.name} onChange={(name) => change(index, { name })} />
          <DateField
            kind="time"
            label={text('shift-starts')}
            value={shift.starts}
            onChange={(starts) => change(index, { starts })}
          />
          <DateField
            kind="time"
            label={text('shift-ends')}
            value={shift.ends}
            onChange={(ends) => change(index, { ends })}
          />
        </div>
      ))}
      <div>
        <Button
          kind="quiet"
          disabledReason={value.length < mostShifts ? undefined : text('shifts-most', { most: mostShifts })}
          onClick={() => onChange([...value, { name: '', starts: '06:00', ends: '14:00' }])}
        >
          {text('shift-add')}
        </Button>
        {value.length > 1 && (
          <Button kind="quiet" onClick={() => onChange(value.slice(0, -1))}>
            {text('shift-remove')}
          </Button>
        )}
      </div>
    </FieldGroup>
  );
}
