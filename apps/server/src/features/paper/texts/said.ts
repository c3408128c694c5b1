import {
  decimalNumber,
  LANGUAGES,
  type Language,
  loadSentences,
  type Said,
  type Sentences,
  sayIn,
} from '@seatwell/contract';
import type { PaperFigures } from '../paper-figures.ts';
import type { PaperWords } from './sheet-texts.ts';

// Paper is made without waiting: its sentences are here before the first sheet is asked for.
const BOOKS: ReadonlyMap<Language, Sentences> = new Map(
  await Promise.all(LANGUAGES.map(async (each) => [each, await loadSentences('calculation', each)] as const)),
);

/** Says what the calculation says in the language of the paper, with its numbers and words; English where it is new. */
export function saidOnPaper(
  language: Language,
  { words }: PaperWords,
  { plain }: PaperFigures,
): (said: Said) => string {
  const english = BOOKS.get('en') ?? {};
  const own = BOOKS.get(language) ?? english;
  return (said) => {
    if (language === 'en') return said.message;
    return sayIn(english, own, said, (name, value) => {
      const number = decimalNumber(value);
      if (number) return plain(number.value);
      return name === 'family' ? (words.family[value as keyof typeof words.family] ?? value) : value;
    });
  };
}
