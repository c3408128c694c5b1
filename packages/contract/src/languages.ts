/** Languages of screens and paper: English, Spanish, Portuguese, Hindi, Arabic. */
export const LANGUAGES = ['en', 'es', 'pt', 'hi', 'ar'] as const;
export type Language = (typeof LANGUAGES)[number];

/** The language of ours that comes nearest to a BCP 47 tag as people, browsers and older records have it. */
export const nearestLanguage = (tag: string | null | undefined): Language =>
  LANGUAGES.find((each) => each === tag?.slice(0, 2).toLowerCase()) ?? 'en';

/** Which way the language is written. */
export const directionOf = (of: Language): 'ltr' | 'rtl' => (of === 'ar' ? 'rtl' : 'ltr');
