import { LANGUAGES } from '@seatwell/contract';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLanguage, useText } from '../texts/text-provider.tsx';
import { Button } from '../ui/button.tsx';
import { Checkbox } from '../ui/checkbox.tsx';
import { Sheet } from '../ui/dialog.tsx';
import { Link } from '../ui/link.tsx';
import { Select } from '../ui/select.tsx';
import { type ThemeChoice, useTheme } from '../ui/theme.tsx';
import { addresses } from './addresses.ts';
import { request } from './api-client.ts';
import { ErrorNotice } from './error-notice.tsx';
import { useMay, useMe, useSavePreferences } from './session.ts';
import styles from './shell.module.css';
import { useGo } from './use-go.ts';

const themes: readonly ThemeChoice[] = ['system', 'light', 'dark', 'bright'];

/** Who is signed in; opens their own settings. */
export function UserMenu() {
  const text = useText('app');
  const me = useMe();
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className={styles.user} aria-haspopup="dialog" onClick={() => setOpen(true)}>
        <span className={styles.userName}>{me.name}</span>
        <span>{text('settings-and-sign-out')}</span>
      </button>
      <Sheet open={open} onOpenChange={setOpen} title={me.name} description={`${me.company} · ${me.email}`}>
        {open && <OwnSettings onLeave={() => setOpen(false)} />}
      </Sheet>
    </>
  );
}

function OwnSettings({ onLeave }: { onLeave: () => void }) {
  const text = useText('app');
  const me = useMe();
  const theme = useTheme();
  const save = useSavePreferences();
  const may = useMay();
  const { language, changeLanguage } = useLanguage();
  const languageName = (code: string) => new Intl.DisplayNames([code], { type: 'language' }).of(code) ?? code;
  return (
    <div className={styles.settings}>
      <ul className={styles.roles} aria-label={text('your-roles')}>
        {me.grants.map((grant) => (
          <li key={grant.grantId}>{`${text(`role-${grant.role}`)} · ${text(`reach-${grant.reach.kind}`)}`}</li>
        ))}
      </ul>
      <Select
        label={text('theme')}
        value={theme.choice}
        options={themes.map((value) => ({ value, label: text(`theme-${value}`) }))}
        onChange={(choice) => {
          theme.setChoice(choice);
          save.mutate({ theme: choice === 'system' ? 'device' : choice });
        }}
      />
      <Checkbox
        label={text('gloves')}
        detail={text('gloves-detail')}
        checked={theme.glove}
        onChange={(gloves) => {
          theme.setGlove(gloves);
          save.mutate({ gloves });
        }}
      />
      <Select
        label={text('units')}
        value={me.preferences.units ?? me.site.units}
        options={(['SI', 'US'] as const).map((value) => ({ value, label: text(`units-${value}`) }))}
        onChange={(units) => save.mutate({ units })}
      />
      <Select
        label={text('language')}
        value={language}
        options={LANGUAGES.map((value) => ({ value, label: languageName(value) }))}
        onChange={(chosen) => {
          changeLanguage(chosen);
          save.mutate({ language: chosen });
        }}
      />
      <ErrorNotice error={save.error} />
      <p className={styles.ways}>
        <Link href={addresses.me()} onClick={onLeave}>
          {text('change-password')}
        </Link>
        <Link href={addresses.shutdowns()} onClick={onLeave}>
          {text('other-shutdown')}
        </Link>
        {may('operate') && (
          <Link href={addresses.server()} onClick={onLeave}>
            {text('operating')}
          </Link>
        )}
      </p>
      <SignOut />
    </div>
  );
}

function SignOut() {
  const text = useText('app');
  const queries = useQueryClient();
  const go = useGo();
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<unknown>();
  const leave = async () => {
    setBusy(true);
    try {
      await request('/session', { method: 'DELETE' });
      go(addresses.signIn());
      queries.clear();
    } catch (error) {
      setFailed(error);
      setBusy(false);
    }
  };
  return (
    <>
      <ErrorNotice error={failed} />
      <Button busy={busy} onClick={() => void leave()}>
        {text('sign-out')}
      </Button>
    </>
  );
}
