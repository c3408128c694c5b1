import { RULES } from '@seatwell/workflow';
import { ApiProblem } from '../../app/api-problem.ts';
import { useProblemDetails } from '../../app/error-notice.tsx';
import { useRuleWords, type WordsOfRule } from '../../app/use-rule-words.ts';
import { type Trade, useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import type { Formatter } from '../../format/formatter.ts';
import { instantsIn } from '../../format/instants-in.ts';
import type { ProblemDetails, ProblemItem } from '../../ui/problem.tsx';

/** Who may clear a rule, in words; undefined for what is no rule. */
export function whoClears(trade: Trade, code: string | undefined): string | undefined {
  const roles = RULES.find((rule) => rule.code === code)?.clearedBy ?? [];
  return roles.length === 0 ? undefined : roles.map((role) => trade.word('role', role)).join(', ');
}

interface Failed {
  readonly rule: string;
  readonly message: string;
  readonly why: string;
  readonly remedy: string;
  readonly detail: string;
}

/** A failed rule in full: what was found, why it matters, what clears it, and who. */
export function ruleItem(trade: Trade, ruleWords: WordsOfRule, format: Formatter, failed: Failed): ProblemItem {
  const words = ruleWords(failed.rule);
  return {
    code: failed.rule,
    message: [words?.sentence ?? failed.message, instantsIn(failed.detail, format.dayTime)].filter(Boolean).join(' '),
    remedy: [words?.why ?? failed.why, words?.remedy ?? failed.remedy].filter(Boolean).join(' '),
    who: whoClears(trade, failed.rule),
  };
}

/** An error in words; of failed rules each with why it matters and who clears it. */
export function useRulesProblem(): (error: unknown) => ProblemDetails | undefined {
  const trade = useTrade();
  const ruleWords = useRuleWords();
  const format = useFormat();
  const details = useProblemDetails();
  return (error) => {
    if (!(error instanceof ApiProblem) || error.code !== 'rules-not-met') return details(error);
    const errors = error.items.map((item): ProblemItem => {
      const words = ruleWords(item.code ?? '');
      const parts = words ? [words.why, words.remedy] : [item.why, item.remedy];
      return {
        code: item.code,
        path: item.path,
        message: instantsIn(
          words ? [words.sentence, item.detail].filter(Boolean).join(' ') : item.message,
          format.dayTime,
        ),
        remedy: parts.filter((part) => typeof part === 'string' && part !== '').join(' '),
        who: whoClears(trade, item.code),
      };
    });
    const shown = details(error);
    return { title: shown?.title ?? error.title, detail: shown?.detail ?? error.detail, errors };
  };
}

/** Whether rules stopped a fact: it may be kept for review where the work is already done. */
export const rulesStopped = (error: unknown): boolean => error instanceof ApiProblem && error.code === 'rules-not-met';
