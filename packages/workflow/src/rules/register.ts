import { type Rule, rule } from './rule.ts';

/** What is in the register leaves it only where nothing has been done on it. */
export const registerRules: readonly Rule[] = [
  rule({
    code: 'register.begun-work-stays',
    sentence: 'A make that was begun is not cancelled, and its joint is not voided.',
    why: 'An open or part tight flange that leaves the register is a flange that nobody looks for.',
    remedy: 'Close, tighten and check the make; then plan what comes next.',
    clearedBy: ['chargehand', 'inspector'],
    floor: true,
    events: ['make-cancelled', 'joint-voided'],
    test: (_payload, { joint, make }, type) => {
      const begun = (type === 'make-cancelled' ? [make] : joint.makes).find(
        (each) => !each.cancelled && (each.openedAt !== null || each.fitted !== null || each.passes.length > 0),
      );
      return begun ? { detail: `Make ${begun.number} is ${begun.stage.replaceAll('-', ' ')}.` } : null;
    },
  }),
];
