import { EN } from './en/index.ts';

/** Languages that paper can be printed in. */
export const PAPER_LANGUAGES = ['en', 'es', 'pt', 'hi', 'ar'] as const;
export type PaperLanguage = (typeof PAPER_LANGUAGES)[number];

/** Every word of the paper; {names} are filled in by `fill`. */
export type SheetTexts = typeof EN;
export type BannerCode = keyof SheetTexts['banners'];

// Another language is a folder of the same shape beside en/: `export const ES = { … } satisfies SheetTexts` and its line
// here. A key that is missing does not compile.
const CATALOGUES: Readonly<Partial<Record<PaperLanguage, SheetTexts>>> = { en: EN };

/** The languages that have their catalogue. */
export const offeredLanguages: readonly PaperLanguage[] = PAPER_LANGUAGES.filter((each) => CATALOGUES[each]);

/** A language as asked for, or English where paper has no words of it. */
export const paperLanguage = (asked: string | null | undefined): PaperLanguage =>
  offeredLanguages.find((each) => each === asked?.slice(0, 2)) ?? 'en';

export const sheetTexts = (language: PaperLanguage): SheetTexts => CATALOGUES[language] ?? EN;

/** Which way the language is written. */
export const directionOf = (language: PaperLanguage): 'ltr' | 'rtl' => (language === 'ar' ? 'rtl' : 'ltr');

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
