import { LANGUAGES, type Language, nearestLanguage, type Said } from '@seatwell/contract';
import { type PaperFigures, type PaperUnits, paperFigures } from '../paper-figures.ts';
import { AR } from './ar/index.ts';
import { EN } from './en/index.ts';
import { ES } from './es/index.ts';
import { HI } from './hi/index.ts';
import { PT } from './pt/index.ts';
import { saidOnPaper } from './said.ts';

/** Paper is printed in the languages of the screens. */
export type PaperLanguage = Language;

/** Every word of the paper; {names} are filled in by `fill`. */
export type PaperWords = typeof EN;
/** The words of a language with its way to write numbers and dates. */
export type SheetTexts = PaperWords & {
  readonly figures: PaperFigures;
  /** a warning or refusal of the calculation */
  readonly said: (said: Said) => string;
};
export type BannerCode = keyof SheetTexts['banners'];

// Another language is a folder of the same shape beside en/: `export const ES = { … } satisfies PaperWords` and its line
// here. A key that is missing does not compile.
const CATALOGUES: Readonly<Partial<Record<PaperLanguage, PaperWords>>> = { en: EN, es: ES, pt: PT, hi: HI, ar: AR };

/** A language of paper from what was asked for or chosen, English where paper has no words of it. */
export function paperLanguage(asked: string | null | undefined): PaperLanguage {
  const nearest = nearestLanguage(asked);
  return CATALOGUES[nearest] ? nearest : 'en';
}

/** The languages that have their catalogue. */
export const offeredLanguages: readonly PaperLanguage[] = LANGUAGES.filter((each) => CATALOGUES[each]);

const made = new Map<string, SheetTexts>();

/** What paper says in a language, and how it writes figures for who prints it. */
export function sheetTexts(language: PaperLanguage, units: PaperUnits = 'SI'): SheetTexts {
  const key = `${language} ${units}`;
  const known = made.get(key);
  if (known) return known;
  const words = CATALOGUES[language] ?? EN;
  const figures = paperFigures(language, units);
  const texts = { ...words, figures, said: saidOnPaper(language, words, figures) };
  made.set(key, texts);
  return texts;
}

/**
 * Fills the {names} of a text.
 * @throws Error when a name has no value, or a number with decimals that nobody wrote in the language: a hole or a
 * foreign decimal mark on paper is seen too late
 */
export function fill(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replaceAll(/\{(\w+)\}/g, (_whole, name: string) => {
    const value = values[name];
    if (value === undefined) throw new Error(`The text “${text}” needs {${name}}.`);
    if (typeof value === 'number' && !Number.isInteger(value))
      throw new Error(
        `The text “${text}” was given ${value} for {${name}}; write it with the figures of the language.`,
      );
    return String(value);
  });
}
