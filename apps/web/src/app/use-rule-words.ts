import type { Said } from '@seatwell/contract';
import { RULES } from '@seatwell/workflow';
import { use, useCallback } from 'react';
import { useLanguage } from '../texts/text-provider.tsx';
import { catalogueOf } from '../texts/translate.ts';

/** What a rule demands, why, and what clears it. */
export interface RuleWords {
  readonly sentence: string;
  readonly why: string;
  readonly remedy: string;
}

/** The words of a rule by its code; undefined for what is no rule. */
export type WordsOfRule = (code: string) => RuleWords | undefined;

/**
 * The words of rules in the language of the screen. English is what the rules themselves say; it is not in a
 * catalogue, and pages that tell no rule do not load the rules.
 */
export function useRuleWords(): WordsOfRule {
  const { language } = useLanguage();
  const translated = use(catalogueOf('rules', language));
  return useCallback(
    (code) => {
      const rule = RULES.find((each) => each.code === code);
      if (!rule) return undefined;
      const word = (part: keyof RuleWords): string => translated[`${code}.${part}`] ?? rule[part];
      return { sentence: word('sentence'), why: word('why'), remedy: word('remedy') };
    },
    [translated],
  );
}

/** A reason that begins with the sentence of a rule, with the rule's words here; what was found stays as it was judged. */
export function useRuleSaid(): (said: Said) => string {
  const ruleWords = useRuleWords();
  return useCallback(
    ({ code, message }) => {
      const english = RULES.find((rule) => rule.code === code)?.sentence;
      const words = ruleWords(code);
      return english && words && message.startsWith(english)
        ? `${words.sentence}${message.slice(english.length)}`
        : message;
    },
    [ruleWords],
  );
}
