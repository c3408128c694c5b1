import { isWorkedOn } from '../fold/merge.ts';
import type { MakeState } from '../state.ts';
import { type Rule, rule } from './rule.ts';

const stageOf = (make: MakeState): string => `Make ${make.number} is ${make.stage.replaceAll('-', ' ')}.`;

/** What is in the register leaves it only where nothing has been done on it. */
export const registerRules: readonly Rule[] = [
  rule({
    code: 'register.begun-work-stays',
    sentence: 'A make that was begun is not cancelled, nor its joint voided.',
    why: 'An open or part tight flange that leaves the register is a flange that nobody looks for.',
    remedy: 'Close, tighten and check the make; then plan what comes next.',
    clearedBy: ['chargehand', 'inspector'],
    floor: true,
    events: ['make-cancelled', 'joint-voided'],
    test: (_payload, { joint, make }, type) => {
      const begun = (type === 'make-cancelled' ? [make] : joint.makes).find(isWorkedOn);
      return begun ? { detail: stageOf(begun) } : null;
    },
  }),
  rule({
    code: 'register.merged-in-register',
    sentence: 'A found joint is merged with a joint that is in the register.',
    why: 'Work that goes to a void joint is lost with it.',
    remedy: 'Choose the joint that is in the register now, or keep the found joint.',
    clearedBy: ['coordinator'],
    floor: true,
    events: ['joint-merged'],
    test: (_payload, { joint, mergeInto }) => {
      if (!joint.found) return { detail: `${joint.tag} was not found but listed.` };
      if (joint.voided) return { detail: `${joint.tag} is void (${joint.voided.why}).` };
      if (!mergeInto) return { detail: 'The joint to merge with is not known.' };
      return mergeInto.joint.voided
        ? { detail: `${mergeInto.joint.tag} is void (${mergeInto.joint.voided.why}).` }
        : null;
    },
  }),
  rule({
    code: 'register.merged-once-worked',
    sentence: 'The work of a found joint goes to one make on which nothing was done.',
    why: 'Two records of one closing contradict each other, and the later one would hide the earlier.',
    remedy: 'Finish and plan one more make of the joint in the register, or keep the found joint under its own tag.',
    clearedBy: ['coordinator'],
    floor: true,
    events: ['joint-merged'],
    test: (_payload, { joint, mergeInto }) => {
      const worked = joint.makes.filter(isWorkedOn);
      if (worked.length === 0 || !mergeInto) return null;
      if (worked.length > 1)
        return { detail: `${joint.tag} has ${worked.length} makes that were worked on.`, limit: 1 };
      const { make } = mergeInto;
      if (!make) return { detail: `${mergeInto.joint.tag} has no make that waits for work.` };
      return isWorkedOn(make) ? { detail: `${mergeInto.joint.tag}: ${stageOf(make)}` } : null;
    },
  }),
];
