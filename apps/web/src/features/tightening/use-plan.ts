import { CalcRefusal } from '@seatwell/calc';
import { useMemo } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import type { Job } from '../work/job.ts';
import { type TighteningPlan, tighteningPlan } from './pass-steps.ts';

/** The steps of the make's procedure on this flange, or why there are none. */
export function usePlan(job: Job): { plan: TighteningPlan | null; refusal: string | null } {
  const text = useText('tightening');
  const content = job.make.procedure?.content;
  const boltCount = job.joint.bolting?.count;
  return useMemo(() => {
    if (!content) return { plan: null, refusal: text('missing-procedure') };
    if (boltCount === undefined) return { plan: null, refusal: text('missing-bolting') };
    try {
      return { plan: tighteningPlan(content, boltCount), refusal: null };
    } catch (error) {
      if (error instanceof CalcRefusal) return { plan: null, refusal: error.message };
      throw error;
    }
  }, [content, boltCount, text]);
}
