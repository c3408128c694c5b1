import { directionOf, withReadingOrder } from '@seatwell/contract';
import type { PaperLanguage } from './sheet-texts.ts';

const FIRST_STRONG_ISOLATE = '\u2068';
const POP_ISOLATE = '\u2069';

const isolatedText = (text: string): string =>
  text === '' ? text : `${FIRST_STRONG_ISOLATE}${withReadingOrder(text)}${POP_ISOLATE}`;

/**
 * Data for the typesetter in which each text keeps its own direction: on a page from right to left, tags, numbers and
 * units read as they were entered. Addresses, drawings and file paths are for machines and stay as they are.
 */
export function isolated<T>(data: T, language: PaperLanguage, machine: readonly string[]): T {
  if (directionOf(language) === 'ltr') return data;
  const walk = (value: unknown, key: string): unknown => {
    if (machine.includes(key)) return value;
    if (typeof value === 'string') return isolatedText(value);
    if (Array.isArray(value)) return value.map((each) => walk(each, key));
    if (value !== null && typeof value === 'object')
      return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, walk(each, name)]));
    return value;
  };
  return walk(data, '') as T;
}
