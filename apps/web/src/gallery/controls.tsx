import { useState } from 'react';
import { Button } from '../ui/button.tsx';
import { Checkbox } from '../ui/checkbox.tsx';
import { Combobox } from '../ui/combobox.tsx';
import { DateField } from '../ui/date-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { PageHeader } from '../ui/page-header.tsx';
import { RadioCards } from '../ui/radio-cards.tsx';
import { Select } from '../ui/select.tsx';
import { TextField } from '../ui/text-field.tsx';
import { type ThemeChoice, useTheme } from '../ui/theme.tsx';
import styles from './gallery.module.css';

const procedures = Array.from({ length: 400 }, (_, index) => ({
  value: `p${index}`,
  label: `BP-${String(index + 1).padStart(2, '0')} rev ${1 + (index % 4)}`,
  detail: index % 2 === 0 ? 'hydraulic wrench, legacy pattern' : 'tensioner, 50 % coverage',
}));

/** Every control, with its states. */
export function Controls() {
  const { choice, setChoice, glove, setGlove } = useTheme();
  const [note, setNote] = useState('');
  const [torque, setTorque] = useState<number | undefined>(475);
  const [method, setMethod] = useState<'wrench' | 'tensioner' | ''>('');
  const [procedure, setProcedure] = useState('p6');
  const [day, setDay] = useState('2027-03-09');
  const [ticked, setTicked] = useState(true);
  const [finding, setFinding] = useState<'smooth' | 'scored' | 'deep' | ''>('scored');
  return (
    <>
      <PageHeader title="Controls" sub="Labels stay, limits are shown, a button that cannot be used says why" />
      <div className={styles.even}>
        <Select<ThemeChoice>
          label="Theme"
          value={choice}
          onChange={setChoice}
          options={[
            { value: 'system', label: 'As the device' },
            { value: 'light', label: 'Light' },
            { value: 'dark', label: 'Dark' },
            { value: 'bright', label: 'Bright, for sunlight' },
          ]}
        />
        <Checkbox label="Glove mode" detail="larger targets" checked={glove} onChange={setGlove} />
      </div>
      <div className={styles.row}>
        <Button kind="primary">Bolt 6 done</Button>
        <Button>Stop here</Button>
        <Button kind="quiet">Not now</Button>
        <Button kind="stop">Put on hold</Button>
        <Button kind="primary" busy>
          Import
        </Button>
        <Button kind="primary" disabledReason="The tool's calibration ended on 2 March. The store can issue another.">
          Start pass 1
        </Button>
      </div>
      <div className={styles.even}>
        <TextField label="Remark" optional value={note} onChange={setNote} hint="What the next shift should know" />
        <NumberField label="Set value" unit="N·m" value={torque} onChange={setTorque} least={95} most={680} />
        <NumberField label="Gap at 3 o'clock" unit="mm" value={undefined} onChange={() => undefined} />
        <TextField
          label="Tag"
          value="U41-HX3-7"
          onChange={() => undefined}
          error="No joint has the tag U41-HX3-7. The nearest is U41-HX3-07."
        />
        <Select
          label="Method"
          value={method}
          onChange={setMethod}
          options={[
            { value: 'wrench', label: 'Hydraulic wrench' },
            { value: 'tensioner', label: 'Tensioner', disabledReason: 'no room behind the nuts' },
          ]}
        />
        <Combobox label="Procedure" value={procedure} onChange={setProcedure} options={procedures} />
        <DateField label="Planned" value={day} onChange={setDay} />
        <TextField label="Why" lines={3} value={note} onChange={setNote} />
        <TextField
          label="Joint"
          value="U41-HX3-07"
          onChange={() => undefined}
          disabled
          hint="Taken from the scanned tag"
        />
      </div>
      <RadioCards
        label="Condition of the face"
        value={finding}
        onChange={setFinding}
        options={[
          { value: 'smooth', label: 'Smooth', detail: 'no mark that a nail can feel' },
          { value: 'scored', label: 'Light scoring', detail: 'within the limit of the sheet' },
          { value: 'deep', label: 'Deep scoring', disabledReason: 'measure the depth first' },
        ]}
      />
      <Checkbox label="Marking photographed" checked={ticked} onChange={setTicked} />
    </>
  );
}
