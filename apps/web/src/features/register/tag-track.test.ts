import { describe, expect, test } from 'vitest';
import { trackOfTags } from './tag-track.ts';

const rows = (...tags: readonly string[]) => [tags.map((tag) => ({ tag }))];
const rem = (track: string) => Number.parseFloat(track);

describe('the column of the tags', () => {
  test('is as wide as its longest tag needs', () => {
    expect(rem(trackOfTags(rows('A-1', '10-01-C10011-213')))).toBe(rem(trackOfTags(rows('10-01-C10011-213'))));
    expect(rem(trackOfTags(rows('10-01-C10011-2131')))).toBeGreaterThan(rem(trackOfTags(rows('10-01-C10011-213'))));
  });

  test('gives wide capitals more room than digits', () => {
    expect(rem(trackOfTags(rows('MWMWMWMWMWMW')))).toBeGreaterThan(rem(trackOfTags(rows('111111111111'))));
  });

  test('keeps room for its head where the list is empty', () => {
    expect(trackOfTags([])).toBe('6.00rem');
  });
});
