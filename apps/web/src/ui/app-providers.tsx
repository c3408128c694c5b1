import type { ReactNode } from 'react';
import { ThemeProvider } from './theme.tsx';
import { AnnouncerProvider } from './toast.tsx';

/** What the parts of src/ui need above them, inside a TextProvider. */
export function AppProviders({ children }: { children: ReactNode }) {
  return (
    <ThemeProvider>
      <AnnouncerProvider>{children}</AnnouncerProvider>
    </ThemeProvider>
  );
}
