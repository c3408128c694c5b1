import { describe, expect, test } from 'vitest';
import { choicesOf } from './choices-of.ts';

describe('what may stand at a place of a record', () => {
  test('one of the codes of the contract, through lists and what may be missing', () => {
    expect(choicesOf('nipped-up', ['bolting', 'condition'])).toEqual(['new', 'reused']);
    expect(choicesOf('nipped-up', ['gasket', 'family'])).toContain('spiral-wound');
    expect(choicesOf('faces-inspected', ['faces', 1, 'condition'])).toContain('light-marks');
    expect(choicesOf('loosened', ['extent'])).toEqual(['some', 'all']);
  });

  test('anything where the contract has no list, and nothing of an event that it does not have', () => {
    expect(choicesOf('nipped-up', ['gasket', 'batch'])).toBeUndefined();
    expect(choicesOf('nipped-up', ['gasket', 'nowhere', 'else'])).toBeUndefined();
    expect(choicesOf('no-such-event', ['extent'])).toBeUndefined();
  });
});
