import type { Me } from '@seatwell/contract';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { outbox } from '../offline/outbox.ts';
import { useText } from '../texts/text-provider.tsx';
import { TextField } from '../ui/text-field.tsx';
import { addresses } from './addresses.ts';
import { request } from './api-client.ts';
import { FormDialog } from './form-dialog.tsx';
import { sessionQuery, useMe } from './session.ts';
import { clearEnded, useSessionEnded } from './session-end.ts';

/** Stands over a page whose session is over, so that what was entered there is not lost. */
export function SignInAgain() {
  // Mounted only while it asks: the password never outlives the dialog.
  return useSessionEnded() ? <Asking /> : null;
}

function Asking() {
  const text = useText('app');
  const { email } = useMe();
  const queries = useQueryClient();
  const [password, setPassword] = useState('');
  const signIn = useMutation({
    mutationFn: () => request<Me>('/session', { method: 'POST', body: { email, password } }),
    onSuccess: (me) => {
      queries.setQueryData(sessionQuery.queryKey, me);
      clearEnded();
      outbox.retryNow();
      return queries.invalidateQueries();
    },
  });
  // The app is loaded anew: nothing that one person read stays in it for the next.
  const leave = () => window.location.assign(addresses.signIn(window.location.pathname));
  return (
    <FormDialog
      title={text('session-ended')}
      description={text('session-ended-detail')}
      sendLabel={text('sign-in-again')}
      cancelLabel={text('other-account')}
      missing={password === '' ? text('password-needed') : undefined}
      busy={signIn.isPending}
      error={signIn.error}
      onSend={() => signIn.mutate()}
      onCancel={leave}
      // Put aside, it comes again with the next answer that says so.
      onClose={clearEnded}
    >
      <p>{text('session-ended-as', { email })}</p>
      <TextField
        label={text('password')}
        type="password"
        autoComplete="current-password"
        value={password}
        onChange={setPassword}
      />
    </FormDialog>
  );
}
