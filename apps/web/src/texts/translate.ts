import { type Language, nearestLanguage } from '@seatwell/contract';
import i18next, { type i18n } from 'i18next';
import app from './en/app.json';
import type * as english from './en/index.ts';
import trade from './en/trade.json';
import ui from './en/ui.json';

type Catalogues = typeof english;

/** A feature that has a catalogue in texts/en. */
export type Feature = keyof Catalogues;

type WithoutPlural<Key> = Key extends `${infer Base}_${'zero' | 'one' | 'two' | 'few' | 'many' | 'other'}` ? Base : Key;

/** A key of a feature's catalogue; the plural forms `key_one`, `key_other` are asked for as `key` with `count`. */
export type TextKey<F extends Feature> = WithoutPlural<Exclude<keyof Catalogues[F], 'default'>> & string;

/** Values for the `{{placeholders}}` of a text: format numbers and dates before they get here. */
export type TextValues = Readonly<Record<string, string | number>>;

export type Translate<F extends Feature> = (key: TextKey<F>, values?: TextValues) => string;

// The frame of every page speaks with these; a feature's own catalogue comes with its page.
const everywhere = { app, trade, ui };
// The rules themselves speak English.
const rules = {};

const files = import.meta.glob<{ default: Record<string, string> }>('./*/*.json');
type Catalogue = Readonly<Record<string, string>>;
const loading = new Map<string, Promise<Catalogue>>(
  Object.entries({ ...everywhere, rules }).map(([feature, catalogue]) => [
    pathOf('en', feature),
    settled(Promise.resolve(catalogue), catalogue),
  ]),
);

function pathOf(language: Language, feature: string): string {
  return `./${language}/${feature.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}.json`;
}

/** Loads the catalogues of features, for pages that open another feature's dialogs. */
export function loadTexts(...features: readonly Feature[]): Promise<unknown> {
  const language = nearestLanguage(document.documentElement.lang);
  const languages = [...new Set(['en' as const, language])];
  return Promise.all(features.flatMap((feature) => languages.map((each) => catalogueOf(feature, each))));
}

/**
 * The catalogue of a feature in a language: the same promise each time, so that React can wait for it.
 * `rules` is no feature: the rules' own words are English, and the other languages have them beside their catalogues.
 */
export function catalogueOf(feature: Feature | 'rules', language: Language): Promise<Catalogue> {
  const path = pathOf(language, feature);
  const known = loading.get(path);
  if (known) return known;
  // A language that lacks a catalogue speaks English there; a test says so.
  const load = files[path] ?? files[pathOf('en', feature)];
  if (!load) throw new Error(`There is no catalogue "${path}" in texts.`);
  const promise = load().then(
    (module) => {
      settled(promise, module.default);
      return module.default;
    },
    (error: unknown) => {
      // A lost connection: the next page that asks tries again.
      loading.delete(path);
      throw error;
    },
  );
  loading.set(path, promise);
  return promise;
}

/** Marks a promise as React's `use` does, so that a catalogue that is here is read without waiting. */
function settled(promise: Promise<Catalogue>, value: Catalogue): Promise<Catalogue> {
  return Object.assign(promise, { status: 'fulfilled', value });
}

/**
 * Builds the translator: English is always present and the fallback of every other language.
 * A missing key throws while developing and testing; in production the key is shown, since a crew that
 * stands at the flange is better served by one odd word than by no screen.
 */
export function createTranslator(language: Language = 'en'): i18n {
  const translator = i18next.createInstance();
  void translator.init({
    lng: language,
    fallbackLng: 'en',
    resources: { en: { ...everywhere } },
    ns: Object.keys(everywhere),
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
