import { procedureContent } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { procedureMissing, readPercents, startingContent } from './procedure-draft.ts';

const complete = {
  ...startingContent,
  lubricantId: '01890000-0000-7000-8000-000000000001',
  policy: { ...startingContent.policy, source: 'site standard, section 6' },
};

describe('a procedure as it is drafted', () => {
  test('is what the API takes once nothing is missing', () => {
    expect(procedureMissing('BP-07', 'Heat exchangers', complete)).toBeUndefined();
    expect(procedureContent.safeParse(complete).success).toBe(true);
  });

  test('passes rise and end at 100 %', () => {
    expect(procedureMissing('BP-07', 'x', { ...complete, passPercents: [30, 30, 100] })).toBe('passes-rise');
    expect(procedureMissing('BP-07', 'x', { ...complete, passPercents: [30, 70] })).toBe('passes-rise');
  });

  test('a policy without a source is not sent', () => {
    expect(procedureMissing('BP-07', 'x', { ...complete, policy: startingContent.policy })).toBe(
      'policy-source-needed',
    );
  });

  test.each([
    ['30 70 100', [30, 70, 100]],
    ['30, 70, 100', [30, 70, 100]],
    ['30/70/100 %', [30, 70, 100]],
    ['30 seventy', undefined],
    ['', undefined],
  ])('"%s" is read as %s', (typed, read) => {
    expect(readPercents(typed)).toEqual(read);
  });
});
