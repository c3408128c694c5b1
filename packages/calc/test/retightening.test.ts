import { describe, expect, it } from 'vitest';
import {
  CalcRefusal,
  GASKET_FAMILY_CODES,
  mayRetighten,
  type RetighteningRequest,
  retighteningRule,
} from '../src/index.ts';

const cold: RetighteningRequest = {
  family: 'fibre-sheet',
  hasBeenHot: false,
  temperature_C: 20,
  hoursSinceAssembly: 6,
};
const may = (change: Partial<RetighteningRequest>) => mayRetighten({ ...cold, ...change }).accepted;
const codeOf = (change: Partial<RetighteningRequest>) => {
  try {
    mayRetighten({ ...cold, ...change });
  } catch (error) {
    if (error instanceof CalcRefusal) return error.code;
    throw error;
  }
  return undefined;
};

describe('retightening', () => {
  it('has a rule with a source for every family', () => {
    for (const family of GASKET_FAMILY_CODES) {
      expect(retighteningRule(family).sentence, family).toMatch(/\.$/);
      expect(retighteningRule(family).source).toContain('common practice');
    }
    expect(() => retighteningRule('cheese')).toThrow(CalcRefusal);
  });

  it('of elastomer-bound fibre is for cold joints that were never hot', () => {
    expect(may({})).toBe(true);
    expect(may({ hasBeenHot: true })).toBe(false);
    expect(may({ temperature_C: 50.4 })).toBe(false);
    expect(may({ temperature_C: 50 })).toBe(true);
  });

  it('of PTFE is cold, within about 24 h or after the first cycle', () => {
    const ptfe = { family: 'ptfe-sheet' };
    expect(may({ ...ptfe, hoursSinceAssembly: 24 })).toBe(true);
    expect(may({ ...ptfe, hoursSinceAssembly: 24.1 })).toBe(false);
    expect(may({ ...ptfe, hoursSinceAssembly: 300, hasBeenHot: true })).toBe(true);
    expect(may({ ...ptfe, hasBeenHot: true, temperature_C: 90 })).toBe(false);
  });

  it('at start-up needs the window that the site states', () => {
    const hot = { family: 'spiral-wound', hasBeenHot: true, temperature_C: 180 };
    expect(codeOf(hot)).toBe('retightening-window-missing');
    const siteWindow = { from_C: 120, to_C: 230, source: 'site procedure' };
    expect(may({ ...hot, siteWindow })).toBe(true);
    expect(may({ ...hot, siteWindow, temperature_C: 231 })).toBe(false);
    expect(may({ ...hot, siteWindow, temperature_C: 119 })).toBe(false);
    expect(mayRetighten({ ...cold, ...hot, siteWindow }).source).toBe('site procedure');
    expect(may({ family: 'spiral-wound' })).toBe(true);
  });

  it('of an isolation kit is its maker’s word, which goes first for every family', () => {
    expect(codeOf({ family: 'isolation-kit' })).toBe('makers-word-missing');
    expect(may({ family: 'isolation-kit', maker: { allows: true, source: 'sheet' } })).toBe(true);
    expect(may({ maker: { allows: false, source: 'sheet' } })).toBe(false);
    expect(may({ family: 'none' })).toBe(false);
  });
});
