import {
  type Book,
  decimalNumber,
  type Language,
  loadSentences,
  type Said,
  type Sentences,
  sayIn,
} from '@seatwell/contract';
import { useCallback, useEffect, useState } from 'react';
import { useFormat } from '../format/format-provider.tsx';
import { useLanguage } from '../texts/text-provider.tsx';
import { useTrade } from './use-trade.ts';

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
 * @param limitName words for the limits of a target window, where the page has them
 */
export function useSaid(book: Book, limitName: (name: string) => string = same): (said: Said) => string {
  const { language } = useLanguage();
  const format = useFormat();
  const trade = useTrade();
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
    (said) => {
      if (!pair) return said.message;
      return sayIn(pair.english, pair.own, said, (name, value) => {
        const number = decimalNumber(value);
        if (number) return format.number(number.value, number.decimals);
        if (name === 'family') return trade.word('family', value);
        return LIMITS.includes(name) ? limitName(value) : value;
      });
    },
    [pair, format, trade, limitName],
  );
}

const same = (name: string): string => name;
/** Values that are limits of a window, by their codes. */
const LIMITS: readonly string[] = ['limit', 'lowName', 'highName'];
