import type { WorkScope } from '@seatwell/contract';
import type { Cell, Reading } from './reading.ts';
import { type OpenWords, parseWords, type Words } from './words.ts';

const scopes: readonly Words<WorkScope>[] = [
  {
    code: 'hot-bolting',
    label: 'hot bolting',
    words: /\bhot bolt(ing)?\b/,
    rank: 2,
  },
  {
    code: 'live-tightening',
    label: 'live tightening',
    words: /\b(live|on ?line|leak seal(ing)?)\b/,
    rank: 2,
  },
  {
    code: 'start-up-retorque',
    label: 'start-up retorque',
    words: /\b(start ?up|hot (re ?)?(torque|torquing|tighten(ing)?))\b/,
    rank: 2,
  },
  {
    code: 'retighten-ambient',
    label: 'retighten at ambient',
    words: /\b(ambient|cold (re ?)?(torque|tighten(ing)?))\b/,
    rank: 2,
  },
  {
    code: 'test-only',
    label: 'test only',
    words: /\b(test only|leak test only|witness only|test)\b/,
    rank: 0,
  },
  {
    code: 'break-and-remake',
    label: 'break and remake',
    words:
      /\b(break( (and |n )?re ?make)?|b r|re ?make|open( (and )?close)?|disassembl\w+|split|remove (and )?reinstate|r r|re ?gasket|gasket (change|replacement)|blind(ing)?|swing)\b/,
    rank: 1,
  },
  {
    code: 'new',
    label: 'new joint',
    words: /\b(new|tie ?in|make ?up|first time)\b/,
    rank: 1,
  },
];

const open: readonly OpenWords<WorkScope>[] = [
  {
    words: /\bre ?(torque|tighten|torquing|tightening)|check torque|torque\b/,
    codes: ['retighten-ambient', 'start-up-retorque', 'live-tightening'],
  },
];

/** Reads the work scope: `break & remake`, `B/R`, `new`, `tie-in`, `hot bolting`, `test only` …; `retorque` alone is asked. */
export function parseWorkScope(cell: Cell): Reading<WorkScope> {
  return parseWords(cell, 'work scope', scopes, open);
}
