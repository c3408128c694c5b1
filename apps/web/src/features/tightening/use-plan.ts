import { CalcRefusal } from '@seatwell/calc';
import { computedPasses } from '@seatwell/workflow';
import { useMemo } from 'react';
import { useSaid } from '../../app/use-said.ts';
import { useText } from '../../texts/text-provider.tsx';
import type { Job } from '../work/job.ts';
import { type TighteningPlan, tighteningPlan, withComputedPasses, withTensioningGroups } from './pass-steps.ts';

/** The steps of the make's procedure on this flange, or why there are none. */
export function usePlan(job: Job): { plan: TighteningPlan | null; refusal: string | null } {
  const text = useText('tightening');
  const said = useSaid('calculation');
  const content = job.make.procedure?.content;
  const boltCount = job.joint.bolting?.count;
  const computed = computedPasses(job.state);
  const tensioning = job.state.target?.tensioning;
  return useMemo(() => {
    if (!content) return { plan: null, refusal: text('missing-procedure') };
    if (boltCount === undefined) return { plan: null, refusal: text('missing-bolting') };
    try {
      const plan = tighteningPlan(content, boltCount);
      if (tensioning) return { plan: withTensioningGroups(plan, tensioning), refusal: null };
      return { plan: computed ? withComputedPasses(plan, computed) : plan, refusal: null };
    } catch (error) {
      if (error instanceof CalcRefusal)
        return { plan: null, refusal: error.errors.map((each) => said(each)).join(' ') };
      throw error;
    }
  }, [content, boltCount, computed, tensioning, text, said]);
}
