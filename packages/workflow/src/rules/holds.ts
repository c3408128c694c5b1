import { type Rule, rule } from './rule.ts';

export const holdRules: readonly Rule[] = [
  rule({
    code: 'hold-released.by-its-role',
    sentence: 'A hold is released by the role that it names.',
    why: 'Who stopped the work knows what has to be so before it goes on.',
    remedy: 'Somebody in that role releases it.',
    clearedBy: ['inspector', 'engineer', 'coordinator'],
    floor: true,
    events: ['hold-released'],
    test: ({ holdId }, { joint, actorRoles }) => {
      const hold = joint.holds.find((h) => h.holdId === holdId);
      if (!hold) return { detail: 'The joint has no such hold.' };
      return actorRoles.includes(hold.releasedBy)
        ? null
        : { detail: `Released in the role ${actorRoles.join(', ') || 'none'}.`, limit: hold.releasedBy };
    },
  }),
];
