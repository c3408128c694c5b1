import { EN } from './en.ts';

/** Languages that paper is printed in; another one is a catalogue of the same shape beside English. */
export type PaperLanguage = 'en';

/** Every word of the paper; {names} are filled in by `fill`. */
export type SheetTexts = typeof EN;
export type BannerCode = keyof SheetTexts['banners'];

const CATALOGUES: Readonly<Record<PaperLanguage, SheetTexts>> = { en: EN };

export const sheetTexts = (language: PaperLanguage): SheetTexts => CATALOGUES[language];

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
