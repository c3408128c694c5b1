import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from '../signing/signing.module.css';

interface ExceptionsProps {
  readonly exceptions: readonly string[];
  /** texts of the open B items: each must be closed or listed */
  readonly open: readonly string[];
  readonly onChange: (exceptions: readonly string[]) => void;
}

/** What is handed over unfinished, listed by the coordinator: the open B items by one press, anything else in words. */
export function Exceptions({ exceptions, open, onChange }: ExceptionsProps) {
  const text = useText('handover');
  const [typed, setTyped] = useState('');
  const words = typed.trim();
  const unlisted = open.filter((each) => !exceptions.includes(each));
  const missing = words === '' ? text('missing-exception') : exceptions.includes(words) ? text('listed') : undefined;
  return (
    <section className={styles.group} aria-label={text('exceptions')}>
      <h2>{text('exceptions')}</h2>
      <p>{text('exceptions-how')}</p>
      <ul>
        {exceptions.map((each) => (
          <li key={each}>
            {each}{' '}
            <Button kind="quiet" onClick={() => onChange(exceptions.filter((other) => other !== each))}>
              {text('take-out')}
            </Button>
          </li>
        ))}
      </ul>
      {unlisted.length > 0 && (
        <Button onClick={() => onChange([...exceptions, ...unlisted])}>
          {text('list-open-B', { count: unlisted.length })}
        </Button>
      )}
      <TextField label={text('exception')} lines={2} value={typed} onChange={setTyped} />
      <Button
        disabledReason={missing}
        onClick={() => {
          onChange([...exceptions, words]);
          setTyped('');
        }}
      >
        {text('add-exception')}
      </Button>
    </section>
  );
}
