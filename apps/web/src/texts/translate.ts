import i18next, { type i18n } from 'i18next';
import * as english from './en/index.ts';

type Catalogues = typeof english;

/** A feature that has a catalogue in texts/en. */
export type Feature = keyof Catalogues;

type WithoutPlural<Key> = Key extends `${infer Base}_${'zero' | 'one' | 'two' | 'few' | 'many' | 'other'}` ? Base : Key;

/** A key of a feature's catalogue; the plural forms `key_one`, `key_other` are asked for as `key` with `count`. */
export type TextKey<F extends Feature> = WithoutPlural<Exclude<keyof Catalogues[F], 'default'>> & string;

/** Values for the `{{placeholders}}` of a text: format numbers and dates before they get here. */
export type TextValues = Readonly<Record<string, string | number>>;

export type Translate<F extends Feature> = (key: TextKey<F>, values?: TextValues) => string;

/**
 * Builds the translator: English is always present and the fallback of every other language.
 * A missing key throws while developing and testing; in production the key is shown, since a crew that
 * stands at the flange is better served by one odd word than by no screen.
 * @param language BCP 47 tag, for example `en` or `de-CH`
 */
export function createTranslator(language = 'en'): i18n {
  const translator = i18next.createInstance();
  void translator.init({
    lng: language,
    fallbackLng: 'en',
    resources: { en: { ...english } },
    ns: Object.keys(english),
    defaultNS: false,
    keySeparator: false,
    nsSeparator: false,
    initAsync: false,
    interpolation: { escapeValue: false },
    saveMissing: !import.meta.env.PROD,
    missingKeyHandler: (_languages, feature, key) => {
      throw new Error(`No text "${key}" in the catalogue "${feature}": add it to texts/en/${feature}.json.`);
    },
  });
  return translator;
}
