import { type FormEvent, type ReactNode, useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './setup.module.css';

interface Named {
  readonly code: string;
  readonly name: string;
}

interface Props {
  readonly addLabel: string;
  readonly adding: { readonly isPending: boolean; readonly error: unknown };
  /** why this person may not list it */
  readonly against: string | undefined;
  /** @param empty to be called when it is listed, for the next one */
  readonly onAdd: (named: Named, empty: () => void) => void;
  /** what else is said of it */
  readonly children?: ReactNode;
}

/** Lists one more of what a shutdown is divided into, by its code and its name. */
export function ListingForm({ addLabel, adding, against, onAdd, children }: Props) {
  const text = useText('setup');
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const named = { code: code.trim(), name: name.trim() };
  const complete = named.code !== '' && named.name !== '';
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!complete || against || adding.isPending) return;
    onAdd(named, () => {
      setCode('');
      setName('');
    });
  };
  return (
    <>
      <form className={styles.row} onSubmit={submit} noValidate>
        <TextField label={text('code')} value={code} onChange={setCode} />
        <TextField label={text('name')} value={name} onChange={setName} />
        {children}
        <Button
          kind="primary"
          type="submit"
          busy={adding.isPending}
          disabledReason={against ?? (complete ? undefined : text('code-and-name'))}
        >
          {addLabel}
        </Button>
      </form>
      <ErrorNotice error={adding.error} />
    </>
  );
}
