import { LANGUAGES, type Language, nearestLanguage } from '@seatwell/contract';
import { AR } from './ar/index.ts';
import { EN } from './en/index.ts';
import { ES } from './es/index.ts';
import { HI } from './hi/index.ts';
import { PT } from './pt/index.ts';

/** Paper is printed in the languages of the screens. */
export type PaperLanguage = Language;

/** Every word of the paper; {names} are filled in by `fill`. */
export type SheetTexts = typeof EN;
export type BannerCode = keyof SheetTexts['banners'];

// Another language is a folder of the same shape beside en/: `export const ES = { … } satisfies SheetTexts` and its line
// here. A key that is missing does not compile.
const CATALOGUES: Readonly<Partial<Record<PaperLanguage, SheetTexts>>> = { en: EN, es: ES, pt: PT, hi: HI, ar: AR };

/** A language of paper from what was asked for or chosen, English where paper has no words of it. */
export function paperLanguage(asked: string | null | undefined): PaperLanguage {
  const nearest = nearestLanguage(asked);
  return CATALOGUES[nearest] ? nearest : 'en';
}

/** The languages that have their catalogue. */
export const offeredLanguages: readonly PaperLanguage[] = LANGUAGES.filter((each) => CATALOGUES[each]);

export const sheetTexts = (language: PaperLanguage): SheetTexts => CATALOGUES[language] ?? EN;

/**
 * Fills the {names} of a text.
 * @throws Error when a name has no value: a hole on paper is seen too late
 */
export function fill(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replaceAll(/\{(\w+)\}/g, (_whole, name: string) => {
    const value = values[name];
    if (value === undefined) throw new Error(`The text “${text}” needs {${name}}.`);
    return String(value);
  });
}
