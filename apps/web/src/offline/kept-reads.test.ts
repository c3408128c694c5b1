import { expect, test } from 'vitest';
import { isKept } from './kept-reads.ts';

test.each([
  '/api/v1/session',
  '/api/v1/tools',
  '/api/v1/shutdowns/1/my-joints',
  '/api/v1/shutdowns/1/joints/2',
  '/api/v1/shutdowns/1/joints/2/sheet.pdf',
  '/api/v1/shutdowns/1/packs/3',
])('%s can be read without signal', (path) => {
  expect(isKept(path)).toBe(true);
});

test.each([
  '/api/v1/shutdowns/1/joints',
  '/api/v1/shutdowns/1/live',
  '/api/v1/accounts',
  '/api/v1/files/abc',
  '/api/v1/session/password',
  '/api/v1/shutdowns/1/commands/opened',
])('%s cannot', (path) => {
  expect(isKept(path)).toBe(false);
});
