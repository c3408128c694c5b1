import type { ReactNode } from 'react';
import appTexts from '../texts/en/app.json';
import { useText } from '../texts/text-provider.tsx';
import type { TextKey } from '../texts/translate.ts';
import { Problem, type ProblemDetails } from '../ui/problem.tsx';
import { ApiProblem, type ApiProblemItem } from './api-problem.ts';
import { useSaid } from './use-said.ts';

/** An error in words: the server's refusal, no answer, or a fault of our own. */
export function useProblemDetails(): (error: unknown) => ProblemDetails | undefined {
  const text = useText('app');
  const said = useSaid('problems');
  const calculated = useSaid('calculation');
  const inWords = (item: ApiProblemItem | undefined, shown: string): string => {
    if (item?.code === undefined) return shown;
    const asServer = said({ code: item.code, message: item.message });
    const own = asServer === item.message ? calculated({ code: item.code, message: item.message }) : asServer;
    return own === item.message ? shown : typeof item.joint === 'string' ? `${item.joint}: ${own}` : own;
  };
  return (error) => {
    if (error === null || error === undefined) return undefined;
    if (error instanceof ApiProblem) {
      if (error.code === 'no-answer') return { title: text('no-answer'), detail: text('no-answer-detail') };
      const key = `problem-${error.code}`;
      const title = Object.hasOwn(appTexts, key) ? text(key as TextKey<'app'>) : error.title;
      const errors = error.errors.map((shown, index) => ({
        ...shown,
        message: inWords(error.items[index], shown.message),
      }));
      // What the items say in full is not said twice, where the detail is made of nothing else.
      const whole = error.code === 'calculation-refused' && errors.length > 0;
      const detail = whole ? undefined : said({ code: error.code, message: error.detail });
      return { title, detail, errors };
    }
    return { title: text('own-fault'), detail: error instanceof Error ? error.message : String(error) };
  };
}

/** Shows an error where it happened; nothing when there is none. */
export function ErrorNotice({ error, actions }: { error: unknown; actions?: ReactNode }) {
  const problem = useProblemDetails()(error);
  return problem ? <Problem problem={problem} actions={actions} /> : null;
}
