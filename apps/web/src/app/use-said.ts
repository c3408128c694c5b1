import {
  type Book,
  decimalNumber,
  figuresIn,
  type Language,
  loadSentences,
  type Said,
  type Sentences,
  sayIn,
} from '@seatwell/contract';
import { useCallback, useEffect, useState } from 'react';
import { useFormatIfAny } from '../format/format-provider.tsx';
import { instantsIn } from '../format/instants-in.ts';
import tradeTexts from '../texts/en/trade.json';
import { useLanguage, useText } from '../texts/text-provider.tsx';
import type { TextKey } from '../texts/translate.ts';

/** English and the language of the screen, as soon as they are here. */
interface Pair {
  readonly english: Sentences;
  readonly own: Sentences;
}
const here = new Map<string, Pair>();

async function load(book: Book, language: Language): Promise<void> {
  const [english, own] = await Promise.all([loadSentences(book, 'en'), loadSentences(book, language)]);
  here.set(`${book} ${language}`, { english, own });
}

/**
 * Says what the calculation or the server says in the language of the screen. Its English sentence stands until the
 * sentences are here, and where a page is older than the server: a refusal never waits for a file.
 * What comes back takes `known` words for values beside what is said, by their names.
 * @param limitName words for the limits of a target window, where the page has them
 */
export function useSaid(
  book: Book,
  limitName: (name: string) => string = same,
): (said: Said, known?: Readonly<Record<string, string>>) => string {
  const { language } = useLanguage();
  // Who signs in has no units and no site yet.
  const format = useFormatIfAny();
  const text = useText('trade');
  const [, setLoaded] = useState('');
  const key = `${book} ${language}`;
  const pair = here.get(key);
  useEffect(() => {
    if (language === 'en' || here.has(key)) return;
    // Without the network English stays; the next page that asks tries again.
    load(book, language).then(
      () => setLoaded(key),
      () => undefined,
    );
  }, [book, language, key]);
  return useCallback(
    (said, known = {}) => {
      if (!pair) return said.message;
      const { number } = figuresIn({ language, system: 'SI' });
      const word = (group: string, value: string) => {
        const key = `${group}-${value}`;
        return Object.hasOwn(tradeTexts, key) ? text(key as TextKey<'trade'>) : value;
      };
      return sayIn(pair.english, pair.own, said, (name, value) => {
        const given = known[name];
        if (given !== undefined) return given;
        const decimal = decimalNumber(value);
        if (decimal) return number(decimal.value, decimal.decimals);
        if (name === 'family' || name === 'role') return word(name, value);
        if (name === 'roles')
          return value
            .split(/, | or /)
            .map((role) => word('role', role))
            .join(', ');
        if (LIMITS.includes(name)) return limitName(value);
        return format ? instantsIn(value, format.dayTime) : value;
      });
    },
    [pair, language, format, text, limitName],
  );
}

const same = (name: string): string => name;
/** Values that are limits of a window, by their codes. */
const LIMITS: readonly string[] = ['limit', 'lowName', 'highName'];
