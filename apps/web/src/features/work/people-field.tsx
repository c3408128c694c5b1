import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import type { Person } from './job.ts';
import styles from './work.module.css';

export interface PeopleFieldProps {
  readonly label: string;
  readonly hint?: string;
  readonly people: readonly Person[];
  readonly chosen: readonly string[];
  readonly onChange: (personIds: readonly string[]) => void;
}

/** Who did the work: the person signed in and their mates of the crew. */
export function PeopleField({ label, hint, people, chosen, onChange }: PeopleFieldProps) {
  const text = useText('work');
  const tick = (personId: string, on: boolean) =>
    onChange(on ? [...chosen, personId] : chosen.filter((each) => each !== personId));
  return (
    <fieldset className={styles.group}>
      <legend className={styles.legend}>{label}</legend>
      {hint !== undefined && <p className={styles.soft}>{hint}</p>}
      <div className={styles.ticks}>
        {people.map((person) => (
          <Checkbox
            key={person.personId}
            label={person.isMe ? text('me', { name: person.name }) : person.name}
            checked={chosen.includes(person.personId)}
            onChange={(on) => tick(person.personId, on)}
          />
        ))}
      </div>
      {people.length < 2 && <p className={styles.soft}>{text('no-crew')}</p>}
    </fieldset>
  );
}
