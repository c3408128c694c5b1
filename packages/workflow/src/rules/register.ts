import { hasReached } from '../stages.ts';
import type { MakeState } from '../state.ts';
import { type Rule, rule } from './rule.ts';

const isBegun = (make: MakeState): boolean =>
  !make.cancelled && (make.openedAt !== null || make.fitted !== null || make.passes.length > 0);

/** A found joint may be merged once its own work is checked: only then does nobody have to look for it any more. */
const isSafeToMerge = (make: MakeState): boolean =>
  hasReached(make.stage, 'checked') && !make.leaking && !make.rejected;

/** What is in the register leaves it only where nothing has been done on it. */
export const registerRules: readonly Rule[] = [
  rule({
    code: 'register.begun-work-stays',
    sentence: 'A make that was begun is not cancelled, its joint is not voided, nor merged before it is checked.',
    why: 'An open or part tight flange that leaves the register is a flange that nobody looks for.',
    remedy: 'Close, tighten and check the make; then plan what comes next.',
    clearedBy: ['chargehand', 'inspector'],
    floor: true,
    events: ['make-cancelled', 'joint-voided', 'joint-merged'],
    test: (_payload, { joint, make }, type) => {
      const makes = type === 'make-cancelled' ? [make] : joint.makes;
      const begun = makes.find((each) => isBegun(each) && !(type === 'joint-merged' && isSafeToMerge(each)));
      return begun ? { detail: `Make ${begun.number} is ${begun.stage.replaceAll('-', ' ')}.` } : null;
    },
  }),
];
