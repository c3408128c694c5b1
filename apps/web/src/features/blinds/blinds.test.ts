import { describe, expect, test } from 'vitest';
import { nextSteps } from './blind-table.tsx';
import { blindsOf } from './blinds-page.tsx';

type Rows = Parameters<typeof blindsOf>[0];
const blind = (number: string, state: 'planned' | 'in' | 'out', overdue = false) =>
  ({ number, state, overdue }) as Rows[number];

describe('the blind list', () => {
  const rows = [blind('B1', 'planned'), blind('B2', 'in'), blind('B3', 'in', true), blind('B4', 'out')];
  const numbers = (state: Parameters<typeof blindsOf>[1]) => blindsOf(rows, state).map((row) => row.number);

  test('an overdue blind is still in, and both lists name it', () => {
    expect(numbers('in')).toEqual(['B2', 'B3']);
    expect(numbers('overdue')).toEqual(['B3']);
  });

  test('any state names every blind', () => {
    expect(numbers('any')).toHaveLength(4);
  });

  test('a spade goes in, comes out, and is then done with', () => {
    expect(nextSteps({ type: 'spade', state: 'planned' })).toEqual(['blind-in']);
    expect(nextSteps({ type: 'spade', state: 'in' })).toEqual(['blind-out']);
    expect(nextSteps({ type: 'spade', state: 'out' })).toEqual([]);
  });

  test('a spectacle blind stays in the line and is turned', () => {
    expect(nextSteps({ type: 'spectacle', state: 'planned' })).toEqual(['spectacle-turned']);
  });
});
