import { type AreaProgress, STAGES } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { reportLine, sumRow } from './sum-row.ts';

const none = Object.fromEntries(STAGES.map((stage) => [stage, 0])) as AreaProgress['stages'];

function area(counts: Partial<AreaProgress['stages']>, lapsing: readonly string[]): AreaProgress {
  const signOff = (what: 'check' | 'proof', waiting: number) => ({ what, given: 0, waiting, by: [] });
  return {
    area: null,
    total: 20,
    planned: 10,
    stages: { ...none, ...counts },
    signOffs: [signOff('check', 3), signOff('proof', 1)],
    people: {
      persons: 4,
      inDate: 3,
      lapsing: lapsing.map((personId) => ({
        person: { personId, name: personId },
        qualifiedFor: 'tensioner',
        validThrough: '2027-03-12',
      })),
      missing: [],
    },
  } as AreaProgress;
}

describe('the report', () => {
  test('a line: what is proven is checked and tight as well, part tight is neither', () => {
    const line = reportLine(area({ 'part-tight': 2, tight: 3, checked: 4, proven: 5 }, []));
    expect(line).toMatchObject({ tight: 12, checked: 9, proven: 5, partTight: 2, waiting: 4 });
  });

  test('a person who works in two areas lapses once', () => {
    const rows = [area({}, ['ana', 'tom']), area({}, ['ana'])];
    expect(rows.map((row) => reportLine(row).lapsing)).toEqual([2, 1]);
    expect(sumRow(rows, { total: 40 })).toMatchObject({ total: 40, planned: 20, lapsing: 2, waiting: 8 });
  });
});
