import type { Me } from '@seatwell/contract';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import { request } from '../../app/api-client.ts';
import { BarePage } from '../../app/bare-page.tsx';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { sessionQuery } from '../../app/session.ts';
import { clearEnded } from '../../app/session-end.ts';
import { useGo } from '../../app/use-go.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './session.module.css';

/** Sign in, and go back to where one was. */
export function SignInPage() {
  const text = useText('session');
  const { back } = useSearch({ strict: false }) as { back?: string };
  const queries = useQueryClient();
  const go = useGo();
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const signIn = useMutation({
    mutationFn: () => request<Me>('/session', { method: 'POST', body: { email: email.trim(), password } }),
    onSuccess: (me) => {
      queries.clear();
      clearEnded();
      queries.setQueryData(sessionQuery.queryKey, me);
      go(back ?? '/', { replace: true });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (email !== '' && password !== '' && !signIn.isPending) signIn.mutate();
  };
  return (
    <BarePage>
      <PageHeader title={text('sign-in')} />
      <form className={styles.form} onSubmit={submit}>
        <TextField
          label={text('email')}
          type="email"
          name="email"
          autoComplete="username"
          value={email}
          onChange={setEmail}
        />
        <TextField
          label={text('password')}
          type="password"
          name="password"
          autoComplete="current-password"
          value={password}
          onChange={setPassword}
        />
        <ErrorNotice error={signIn.error} />
        <Button kind="primary" type="submit" size="large" wide busy={signIn.isPending}>
          {text('sign-in')}
        </Button>
      </form>
      <p className={styles.soft}>{text('no-account')}</p>
    </BarePage>
  );
}
