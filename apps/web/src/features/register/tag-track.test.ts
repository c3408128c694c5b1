import { describe, expect, test } from 'vitest';
import { trackOfTags } from './tag-track.ts';

const rem = (track: string) => Number.parseFloat(track);

describe('the column of the tags', () => {
  test('is as wide as its longest tag needs', () => {
    expect(rem(trackOfTags(['A-1', '10-01-C10011-213']))).toBe(rem(trackOfTags(['10-01-C10011-213'])));
    expect(rem(trackOfTags(['10-01-C10011-2131']))).toBeGreaterThan(rem(trackOfTags(['10-01-C10011-213'])));
  });

  test('gives wide capitals more room than digits', () => {
    expect(rem(trackOfTags(['MWMWMWMWMWMW']))).toBeGreaterThan(rem(trackOfTags(['111111111111'])));
  });

  test('keeps room for its head where the list is empty', () => {
    expect(trackOfTags([])).toBe('6.00rem');
  });
});
