import { useCallback } from 'react';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';

// Which of the trade's lists a field of a payload takes its codes from.
const TRADE = { family: 'family', purpose: 'purpose', level: 'checking', way: 'proof' } as const;

const OWN = new Set([
  'code-clean',
  'code-light-marks',
  'code-scored',
  'code-corroded',
  'code-damaged',
  'code-new',
  'code-reused',
  'code-finished',
  'code-interrupted',
  'code-some',
  'code-all',
  'code-test',
  'code-start-up',
  'code-service',
  'code-accepted',
  'code-rejected',
] as const);
type Own = typeof OWN extends Set<infer Key> ? Key : never;

/** The word for a code at a place of a payload. A code that is new to this screen is shown as it is. */
export function useCodeWord(): (path: readonly (string | number)[], code: string) => string {
  const text = useText('joint');
  const trade = useTrade();
  return useCallback(
    (path, code) => {
      const field = path.filter((part) => typeof part === 'string').at(-1);
      if (field !== undefined && field in TRADE) return trade.word(TRADE[field as keyof typeof TRADE], code);
      const key = `code-${code}` as Own;
      return OWN.has(key) ? text(key) : code.replaceAll('-', ' ');
    },
    [text, trade],
  );
}
