import { directionOf, type Language, nearestLanguage } from '@seatwell/contract';
import type { i18n } from 'i18next';
import {
  createContext,
  type ReactNode,
  startTransition,
  use,
  useCallback,
  useContext,
  useEffect,
  useState,
} from 'react';
import { keepReadingOrder } from './reading-order.ts';
import { catalogueOf, createTranslator, type Feature, type Translate } from './translate.ts';

const TextContext = createContext<{
  translator: i18n;
  language: Language;
} | null>(null);

/** The language that this device was last set to, else the browser's. */
const deviceLanguage = (): Language => nearestLanguage(localStorage.getItem('language') ?? navigator.language);

/** Gives the texts to everything below and sets language and direction of the document. */
export function TextProvider({ translator, children }: { translator?: i18n; children: ReactNode }) {
  const [own] = useState(() => translator ?? createTranslator(deviceLanguage()));
  const [language, setLanguage] = useState(nearestLanguage(own.language));

  useEffect(() => {
    const follow = (tag: string) => setLanguage(nearestLanguage(tag));
    own.on('languageChanged', follow);
    return () => own.off('languageChanged', follow);
  }, [own]);

  useEffect(() => {
    document.documentElement.lang = language;
    document.documentElement.dir = directionOf(language);
    if (directionOf(language) === 'rtl') return keepReadingOrder(document.body);
  }, [language]);

  return <TextContext value={{ translator: own, language }}>{children}</TextContext>;
}

/** The language in use and a way to change it. */
export function useLanguage(): {
  language: Language;
  changeLanguage: (language: Language) => void;
} {
  const { translator, language } = useTextContext();
  return {
    language,
    // The old words stay until the new ones are here.
    changeLanguage: (next) =>
      startTransition(() => {
        localStorage.setItem('language', next);
        void translator.changeLanguage(next);
      }),
  };
}

/**
 * The texts of one feature: `const text = useText('register'); text('rows', { count })`.
 * @param feature name of a catalogue in texts/en
 */
export function useText<F extends Feature>(feature: F): Translate<F> {
  const { translator, language } = useTextContext();
  // The page waits, as it does for its own code, until its catalogue is here. English stands behind every language.
  const english = use(catalogueOf(feature, 'en'));
  const own = use(catalogueOf(feature, language));
  if (!translator.hasResourceBundle('en', feature)) translator.addResourceBundle('en', feature, english);
  if (!translator.hasResourceBundle(language, feature)) translator.addResourceBundle(language, feature, own);
  return useCallback(
    (key, values) => translator.t(key, { ...values, ns: feature, lng: language }),
    [translator, feature, language],
  );
}

function useTextContext() {
  const context = useContext(TextContext);
  if (!context) throw new Error('useText needs a TextProvider above it.');
  return context;
}
