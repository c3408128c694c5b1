import type { WordsOfRule } from '../../app/use-rule-words.ts';
import { instantsIn } from '../../format/instants-in.ts';
import { ruleSentences } from './rule-sentences.ts';

// `opened: open.zero-energy-checks, open.caution-shown`: the event, and the rules that failed.
const IN_REVIEW = /^[a-z-]+: (.*)$/;

/** What a flag says beside its word: rules by their sentences, instants in the site's time. */
export function flagDetail(
  flag: { readonly code: string; readonly detail: string },
  time: (instant: string) => string,
  words: WordsOfRule,
): string {
  const codes = flag.code === 'needs-review' ? IN_REVIEW.exec(flag.detail)?.[1] : undefined;
  if (codes !== undefined) return ruleSentences(words, codes.split(', '));
  if (flag.code === 'implausible') return ruleSentences(words, flag.detail.split(', '));
  return instantsIn(flag.detail, time);
}
