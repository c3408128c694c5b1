import type { Me } from '@seatwell/contract';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { request } from '../../app/api-client.ts';
import { BarePage } from '../../app/bare-page.tsx';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { sessionQuery } from '../../app/session.ts';
import { clearEnded } from '../../app/session-end.ts';
import { useGo } from '../../app/use-go.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { FieldGroup } from '../../ui/field-group.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './session.module.css';
import { TimeZoneField } from './time-zone-field.tsx';

const leastSecret = 12;

/** The first visit of an empty installation: the site and its administrator. */
export function FirstVisitPage() {
  const text = useText('session');
  const queries = useQueryClient();
  const go = useGo();
  const [site, setSite] = useState('');
  const [timeZone, setTimeZone] = useState(() => new Intl.DateTimeFormat().resolvedOptions().timeZone);
  const [units, setUnits] = useState<'SI' | 'US'>('SI');
  const [name, setName] = useState('');
  const [company, setCompany] = useState('');
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const [tried, setTried] = useState(false);
  const setUp = useMutation({
    mutationFn: () =>
      request<Me>('/first-visit', {
        method: 'POST',
        body: { siteName: site, timeZone, units, administrator: { name, company, email: email.trim(), password } },
      }),
    onSuccess: (me) => {
      clearEnded();
      queries.setQueryData(sessionQuery.queryKey, me);
      go('/shutdowns', { replace: true });
    },
  });
  const missing = (value: string) => (tried && value.trim() === '' ? text('needed') : undefined);
  const short = password.length < leastSecret;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    const complete = [site, timeZone, name, company, email].every((value) => value.trim() !== '') && !short;
    if (complete && !setUp.isPending) setUp.mutate();
  };
  return (
    <BarePage>
      <PageHeader title={text('first-visit')} sub={text('first-visit-sub')} />
      <form className={styles.form} onSubmit={submit} noValidate>
        <FieldGroup legend={text('site')}>
          <TextField label={text('site-name')} value={site} onChange={setSite} error={missing(site)} />
          <TimeZoneField value={timeZone} onChange={setTimeZone} />
          <Select
            label={text('units')}
            value={units}
            onChange={setUnits}
            options={(['SI', 'US'] as const).map((value) => ({ value, label: text(`units-${value}`) }))}
          />
        </FieldGroup>
        <FieldGroup legend={text('administrator')}>
          <TextField label={text('name')} autoComplete="name" value={name} onChange={setName} error={missing(name)} />
          <TextField
            label={text('company')}
            autoComplete="organization"
            value={company}
            onChange={setCompany}
            error={missing(company)}
          />
          <TextField
            label={text('email')}
            type="email"
            autoComplete="username"
            value={email}
            onChange={setEmail}
            error={missing(email)}
          />
          <TextField
            label={text('password')}
            type="password"
            autoComplete="new-password"
            hint={text('password-hint', { least: leastSecret })}
            value={password}
            onChange={setPassword}
            error={tried && short ? text('password-short', { least: leastSecret, length: password.length }) : undefined}
          />
        </FieldGroup>
        <ErrorNotice error={setUp.error} />
        <Button kind="primary" type="submit" size="large" wide busy={setUp.isPending}>
          {text('set-up')}
        </Button>
      </form>
    </BarePage>
  );
}
