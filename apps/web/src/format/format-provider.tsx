import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { useLanguage } from '../texts/text-provider.tsx';
import { createFormatter, type FormatChoice, type Formatter } from './formatter.ts';

const FormatContext = createContext<Formatter | null>(null);

/** Gives the formatter of the signed-in person and the site to everything below. */
export function FormatProvider({ choice, children }: { choice: Omit<FormatChoice, 'language'>; children: ReactNode }) {
  const { language } = useLanguage();
  const formatter = useMemo(() => createFormatter({ ...choice, language }), [choice, language]);
  return <FormatContext value={formatter}>{children}</FormatContext>;
}

/** The formatter where there is one: before signing in there are neither units nor a site. */
export const useFormatIfAny = (): Formatter | null => useContext(FormatContext);

/** The one formatter: `const format = useFormat(); format.quantity('torque', 475)`. */
export function useFormat(): Formatter {
  const formatter = useContext(FormatContext);
  if (!formatter) throw new Error('useFormat needs a FormatProvider above it.');
  return formatter;
}
