import { moment } from '../time.ts';
import { type Rule, rule } from './rule.ts';

export const releasedRules: readonly Rule[] = [
  rule({
    code: 'released.permit',
    sentence: 'A permit or isolation reference covers the joint now.',
    why: 'Without proven isolation the line may be live.',
    remedy: 'Operations records the permit with this joint on it.',
    clearedBy: ['operations'],
    floor: true,
    events: ['break-released'],
    test: ({ permitId }, { permits, joint, workTime }) => {
      const permit = permits.find((p) => p.permitId === permitId);
      if (!permit) return { detail: 'No permit with this reference is on record.' };
      const name = `Permit ${permit.number}`;
      if (permit.withdrawn) return { detail: `${name} is withdrawn.` };
      if (!permit.jointIds.includes(joint.jointId)) return { detail: `${name} does not cover ${joint.tag}.` };
      const now = moment(workTime);
      return now < moment(permit.validFrom) || now > moment(permit.validUntil)
        ? {
            detail: `${name} is not in force at ${workTime}.`,
            limit: `${permit.validFrom} to ${permit.validUntil}`,
          }
        : null;
    },
  }),
  rule({
    code: 'released.signature',
    sentence: 'Operations signs the release.',
    why: 'Only operations knows what is behind the flange.',
    remedy: 'Somebody of operations signs with the secret.',
    clearedBy: ['operations'],
    floor: true,
    events: ['break-released'],
    test: (_payload, { signed, actorRoles }) => {
      if (!signed) return { detail: 'The release is not signed.' };
      return actorRoles.includes('operations')
        ? null
        : { detail: `Signed in the role ${actorRoles.join(', ') || 'none'}.`, limit: 'operations' };
    },
  }),
];
