import type { Language } from '../languages.ts';
import type { Sentences } from './say.ts';

/** Who says it: the calculation (warnings, remedies, refusals), or the server (the detail of a problem). */
export type Book = 'calculation' | 'problems';

type Load = () => Promise<{ readonly default: Sentences }>;

// One by one, so that a bundler makes a piece of each and a screen loads only its own language.
const LOADS: Readonly<Record<Book, Readonly<Record<Language, Load>>>> = {
  calculation: {
    en: () => import('./calculation/en.json'),
    es: () => import('./calculation/es.json'),
    pt: () => import('./calculation/pt.json'),
    hi: () => import('./calculation/hi.json'),
    ar: () => import('./calculation/ar.json'),
  },
  problems: {
    en: () => import('./problems/en.json'),
    es: () => import('./problems/es.json'),
    pt: () => import('./problems/pt.json'),
    hi: () => import('./problems/hi.json'),
    ar: () => import('./problems/ar.json'),
  },
};

/** Loads the sentences of a book in a language. */
export const loadSentences = async (book: Book, language: Language): Promise<Sentences> =>
  (await LOADS[book][language]()).default;
