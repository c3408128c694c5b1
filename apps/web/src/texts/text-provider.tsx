import type { i18n } from 'i18next';
import { createContext, type ReactNode, use, useCallback, useContext, useEffect, useState } from 'react';
import { catalogueOf, createTranslator, type Feature, type Translate } from './translate.ts';

const TextContext = createContext<{
  translator: i18n;
  language: string;
} | null>(null);

/** Gives the texts to everything below and sets language and direction of the document. */
export function TextProvider({ translator, children }: { translator?: i18n; children: ReactNode }) {
  const [own] = useState(() => translator ?? createTranslator());
  const [language, setLanguage] = useState(own.language);

  useEffect(() => {
    own.on('languageChanged', setLanguage);
    return () => own.off('languageChanged', setLanguage);
  }, [own]);

  useEffect(() => {
    document.documentElement.lang = language;
    document.documentElement.dir = own.dir(language);
  }, [language, own]);

  return <TextContext value={{ translator: own, language }}>{children}</TextContext>;
}

/** The language in use and a way to change it. */
export function useLanguage(): {
  language: string;
  changeLanguage: (language: string) => void;
} {
  const { translator, language } = useTextContext();
  return {
    language,
    changeLanguage: (next) => void translator.changeLanguage(next),
  };
}

/**
 * The texts of one feature: `const text = useText('register'); text('rows', { count })`.
 * @param feature name of a catalogue in texts/en
 */
export function useText<F extends Feature>(feature: F): Translate<F> {
  const { translator, language } = useTextContext();
  // The page waits, as it does for its own code, until its catalogue is here.
  const catalogue = use(catalogueOf(feature));
  if (!translator.hasResourceBundle('en', feature)) translator.addResourceBundle('en', feature, catalogue);
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
