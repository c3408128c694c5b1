import { expect, test } from 'vitest';
import { sharedReason } from './shared-reason.ts';
import type { ReasonAgainst } from './use-reason-against.ts';

const reasonAgainst: ReasonAgainst = (actions, type) => actions.find((each) => each.type === type)?.reason?.message;

const row = (message: string | null) => ({
  actions: [
    {
      type: 'punch-closed',
      allowed: message === null,
      reason: message === null ? null : { code: 'not-allowed', message },
    },
  ],
});

test('a reason that all rows share is said once', () => {
  expect(sharedReason(reasonAgainst, [row('takes an inspector'), row('takes an inspector')], 'punch-closed')).toBe(
    'takes an inspector',
  );
});

test('rows that differ, or allow it, keep their own buttons', () => {
  expect(
    sharedReason(reasonAgainst, [row('takes an inspector'), row('in another area')], 'punch-closed'),
  ).toBeUndefined();
  expect(sharedReason(reasonAgainst, [row(null), row('takes an inspector')], 'punch-closed')).toBeUndefined();
  expect(sharedReason(reasonAgainst, [row('takes an inspector'), row(null)], 'punch-closed')).toBeUndefined();
  expect(sharedReason(reasonAgainst, [], 'punch-closed')).toBeUndefined();
});
