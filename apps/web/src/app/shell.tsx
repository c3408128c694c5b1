import { Outlet, useLocation, useParams } from '@tanstack/react-router';
import { useEffect, useMemo } from 'react';
import { FormatProvider } from '../format/format-provider.tsx';
import { OutboxBar } from '../offline/outbox-bar.tsx';
import { useLanguage, useText } from '../texts/text-provider.tsx';
import { Link } from '../ui/link.tsx';
import { NavFrame } from '../ui/nav-frame.tsx';
import { useTheme } from '../ui/theme.tsx';
import { addresses } from './addresses.ts';
import { KeysButton, KeysSheet, useKeysHelp } from './keys-help.tsx';
import { rememberShutdown } from './last-shutdown.ts';
import { isCurrent, navigation, phoneKeys } from './navigation.ts';
import { useMe } from './session.ts';
import { SignInAgain } from './sign-in-again.tsx';
import { useLiveUpdates } from './use-live-updates.ts';
import { useCurrentShutdown } from './use-shutdown.ts';
import { UserMenu } from './user-menu.tsx';

/** The frame of every page behind the sign-in. */
export function Shell() {
  const text = useText('app');
  const me = useMe();
  const shutdown = useCurrentShutdown();
  const { pathname } = useLocation();
  const { shutdownId } = useParams({ strict: false });
  const keys = useKeysHelp();
  usePreferencesOfAccount();
  useLiveUpdates(shutdown?.shutdownId);
  useEffect(() => {
    if (shutdownId !== undefined) rememberShutdown(shutdownId);
  }, [shutdownId]);

  const system = me.preferences.units ?? me.site.units;
  const timeZone = shutdown?.timeZone ?? me.site.timeZone;
  const choice = useMemo(() => ({ system, timeZone }), [system, timeZone]);
  const roles = me.grants.map((grant) => grant.role);
  const items = navigation.flatMap((entry) => {
    const href = entry.href(shutdown?.shutdownId);
    if (href === undefined) return [];
    return [{ key: entry.key, label: text(entry.key), href, current: isCurrent(entry, pathname) }];
  });

  return (
    <FormatProvider choice={choice}>
      <NavFrame
        name={text('product')}
        where={
          <>
            {me.site.name}
            {shutdown && (
              <>
                {' · '}
                <Link href={addresses.setup(shutdown.shutdownId)}>{shutdown.name}</Link>
              </>
            )}
          </>
        }
        items={items}
        phoneKeys={phoneKeys(roles)}
        foot={
          <>
            <KeysButton onPress={() => keys.setOpen(true)} />
            <UserMenu />
          </>
        }
      >
        <OutboxBar />
        <Outlet />
      </NavFrame>
      <KeysSheet open={keys.open} onOpenChange={keys.setOpen} />
      <SignInAgain />
    </FormatProvider>
  );
}

/** On a device that is new to them, people find theme, gloves and language as they left them elsewhere. */
function usePreferencesOfAccount() {
  const { accountId, preferences } = useMe();
  const { setChoice, setGlove } = useTheme();
  const { changeLanguage } = useLanguage();
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for an account, and not over a change made here
  useEffect(() => {
    if (preferences.theme) setChoice(preferences.theme === 'device' ? 'system' : preferences.theme);
    if (preferences.gloves !== undefined) setGlove(preferences.gloves);
    if (preferences.language) changeLanguage(preferences.language);
  }, [accountId]);
}
