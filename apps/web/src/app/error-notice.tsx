import type { ReactNode } from 'react';
import appTexts from '../texts/en/app.json';
import { useText } from '../texts/text-provider.tsx';
import type { TextKey } from '../texts/translate.ts';
import { Problem, type ProblemDetails } from '../ui/problem.tsx';
import { ApiProblem } from './api-problem.ts';

/** An error in words: the server's refusal, no answer, or a fault of our own. */
export function useProblemDetails(): (error: unknown) => ProblemDetails | undefined {
  const text = useText('app');
  return (error) => {
    if (error === null || error === undefined) return undefined;
    if (error instanceof ApiProblem) {
      if (error.code === 'no-answer') return { title: text('no-answer'), detail: text('no-answer-detail') };
      const key = `problem-${error.code}`;
      const title = Object.hasOwn(appTexts, key) ? text(key as TextKey<'app'>) : error.title;
      return { title, detail: error.detail, errors: error.errors };
    }
    return { title: text('own-fault'), detail: error instanceof Error ? error.message : String(error) };
  };
}

/** Shows an error where it happened; nothing when there is none. */
export function ErrorNotice({ error, actions }: { error: unknown; actions?: ReactNode }) {
  const problem = useProblemDetails()(error);
  return problem ? <Problem problem={problem} actions={actions} /> : null;
}
