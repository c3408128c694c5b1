import { expect, test } from 'vitest';
import { sharedReason } from './shared-reason.ts';

const row = (message: string | null) => ({
  actions: [{ type: 'punch-closed', allowed: message === null, reason: message === null ? null : { message } }],
});

test('a reason that all rows share is said once', () => {
  expect(sharedReason([row('takes an inspector'), row('takes an inspector')], 'punch-closed')).toBe(
    'takes an inspector',
  );
});

test('rows that differ, or allow it, keep their own buttons', () => {
  expect(sharedReason([row('takes an inspector'), row('in another area')], 'punch-closed')).toBeUndefined();
  expect(sharedReason([row(null), row('takes an inspector')], 'punch-closed')).toBeUndefined();
  expect(sharedReason([row('takes an inspector'), row(null)], 'punch-closed')).toBeUndefined();
  expect(sharedReason([], 'punch-closed')).toBeUndefined();
});
