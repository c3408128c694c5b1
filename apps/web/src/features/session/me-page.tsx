import { useMutation } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { request } from '../../app/api-client.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useMe } from '../../app/session.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { useAnnouncer } from '../../ui/toast.tsx';
import styles from './session.module.css';

const leastSecret = 12;

/** One's own account: the password, which is also what one signs with. */
export function MePage() {
  const text = useText('session');
  const me = useMe();
  const { toast } = useAnnouncer();
  const [current, setCurrent] = useState('');
  const [next, setNext] = useState('');
  const change = useMutation({
    mutationFn: () => request('/session/password', { method: 'PUT', body: { current, next } }),
    onSuccess: () => {
      setCurrent('');
      setNext('');
      toast({ message: text('password-changed') });
    },
  });
  const short = next !== '' && next.length < leastSecret;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (current !== '' && next.length >= leastSecret && !change.isPending) change.mutate();
  };
  return (
    <>
      <PageHeader title={text('your-account')} sub={`${me.name} · ${me.company} · ${me.email}`} />
      <form className={styles.form} onSubmit={submit} noValidate>
        <TextField
          label={text('password-now')}
          type="password"
          autoComplete="current-password"
          value={current}
          onChange={setCurrent}
        />
        <TextField
          label={text('password-new')}
          type="password"
          autoComplete="new-password"
          hint={text('password-hint', { least: leastSecret })}
          value={next}
          onChange={setNext}
          error={short ? text('password-short', { least: leastSecret, length: next.length }) : undefined}
        />
        <ErrorNotice error={change.error} />
        <span>
          <Button kind="primary" type="submit" busy={change.isPending}>
            {text('change-password')}
          </Button>
        </span>
      </form>
    </>
  );
}
