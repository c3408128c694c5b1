import { RULES } from '@seatwell/workflow';
import { expect, test } from 'vitest';
import { flagDetail } from './flag-detail.ts';

const words = (code: string) => RULES.find((rule) => rule.code === code);
const time = (instant: string) => `<${instant}>`;

test('rules behind a flag are told by their sentences, never by their codes', () => {
  const review = flagDetail({ code: 'needs-review', detail: 'opened: open.zero-energy-checks' }, time, words);
  expect(review).toMatch(/zero-energy checks/i);
  expect(review).not.toContain('open.zero');
  const implausible = flagDetail({ code: 'implausible', detail: 'passes.time-plausible' }, time, words);
  expect(implausible).not.toContain('passes.');
});

test('instants are told in the time of the site, other details stay', () => {
  expect(flagDetail({ code: 'relaxation-due', detail: 'from 2027-03-09T08:00:00.000Z' }, time, words)).toBe(
    'from <2027-03-09T08:00:00.000Z>',
  );
  expect(flagDetail({ code: 'tool-failed', detail: 'TW-1' }, time, words)).toBe('TW-1');
});
