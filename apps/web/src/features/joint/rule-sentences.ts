import type { WordsOfRule } from '../../app/use-rule-words.ts';

/** Rules by what they demand, one after the other; what is no rule of the catalogue stays as its code. */
export function ruleSentences(words: WordsOfRule, codes: readonly string[]): string {
  return codes.map((code) => words(code)?.sentence ?? code.replaceAll('-', ' ')).join(' ');
}
