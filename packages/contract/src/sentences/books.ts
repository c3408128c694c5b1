import type { Language } from '../languages.ts';
import type { Sentences } from './say.ts';

/**
 * Who says it: the calculation (warnings, remedies, refusals), the server (refusals and reasons), or the reading of a
 * register (what is wrong with a cell, and what only a person can say).
 */
export type Book = 'calculation' | 'problems' | 'register';

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
  register: {
    en: () => import('./register/en.json'),
    es: () => import('./register/es.json'),
    pt: () => import('./register/pt.json'),
    hi: () => import('./register/hi.json'),
    ar: () => import('./register/ar.json'),
  },
};

/** Loads the sentences of a book in a language. */
export const loadSentences = async (book: Book, language: Language): Promise<Sentences> =>
  (await LOADS[book][language]()).default;
