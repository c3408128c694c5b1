import { directionOf } from '@seatwell/contract';
import { Direction } from 'radix-ui';
import type { ReactNode } from 'react';
import { useLanguage } from '../texts/text-provider.tsx';
import { ThemeProvider } from './theme.tsx';
import { AnnouncerProvider } from './toast.tsx';

/** What the parts of src/ui need above them, inside a TextProvider. */
export function AppProviders({ children }: { children: ReactNode }) {
  return (
    <Direction.Provider dir={directionOf(useLanguage().language)}>
      <ThemeProvider>
        <AnnouncerProvider>{children}</AnnouncerProvider>
      </ThemeProvider>
    </Direction.Provider>
  );
}
