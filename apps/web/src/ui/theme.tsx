import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react';
import { useMediaQuery } from './use-media-query.ts';

export type ThemeChoice = 'system' | 'light' | 'dark' | 'bright';
export type Theme = Exclude<ThemeChoice, 'system'>;

interface ThemeState {
  readonly choice: ThemeChoice;
  /** what the choice comes to on this device */
  readonly theme: Theme;
  readonly glove: boolean;
  readonly setChoice: (choice: ThemeChoice) => void;
  readonly setGlove: (glove: boolean) => void;
}

const ThemeContext = createContext<ThemeState | null>(null);
const themeKey = 'seatwell.theme';
const gloveKey = 'seatwell.glove';
const choices: readonly ThemeChoice[] = ['system', 'light', 'dark', 'bright'];

/** Holds theme and glove mode, keeps them on the device, writes them to the document's root. */
export function ThemeProvider({ children }: { children: ReactNode }) {
  const [choice, setChoice] = useState<ThemeChoice>(
    () => choices.find((known) => known === kept(themeKey)) ?? 'system',
  );
  const [glove, setGlove] = useState(() => kept(gloveKey) === 'on');
  const systemDark = useMediaQuery('(prefers-color-scheme: dark)');
  // Where the system forces its own colours, a theme of ours would draw dark ink on a ground that it made black.
  const forced = useMediaQuery('(forced-colors: active)');
  const inUse = forced ? 'system' : choice;
  const theme: Theme = inUse === 'system' ? (systemDark ? 'dark' : 'light') : inUse;

  useEffect(() => {
    if (inUse === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = inUse;
  }, [inUse]);

  useEffect(() => keep(themeKey, choice), [choice]);

  useEffect(() => {
    if (glove) document.documentElement.dataset.glove = '';
    else delete document.documentElement.dataset.glove;
    keep(gloveKey, glove ? 'on' : 'off');
  }, [glove]);

  // What is chosen in one window holds in the others of the same browser.
  useEffect(() => {
    const follow = ({ key, newValue }: StorageEvent) => {
      if (key === themeKey) setChoice(choices.find((known) => known === newValue) ?? 'system');
      if (key === gloveKey) setGlove(newValue === 'on');
    };
    addEventListener('storage', follow);
    return () => removeEventListener('storage', follow);
  }, []);

  const state = useMemo(() => ({ choice, theme, glove, setChoice, setGlove }), [choice, theme, glove]);
  return <ThemeContext value={state}>{children}</ThemeContext>;
}

export function useTheme(): ThemeState {
  const state = useContext(ThemeContext);
  if (!state) throw new Error('useTheme needs a ThemeProvider above it.');
  return state;
}

// Storage may be switched off (private windows): the choice then lasts for the visit.
function kept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function keep(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // nothing to keep it in
  }
}
