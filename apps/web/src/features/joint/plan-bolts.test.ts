import type { ProcedureContent } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { startingContent } from '../engineering/procedure-draft.ts';
import { planBolts, sequenceOf } from './plan-bolts.ts';

const content: ProcedureContent = { ...startingContent, method: 'torque-wrench' };

const pass = (over: object) => ({
  eventId: '01890000-0000-7000-8000-000000000003',
  pass: 1,
  finished: true,
  lastBolt: null,
  boltsDone: 8,
  set: { torque_Nm: 100, asEntered: { value: 100, unit: 'N·m' } },
  toolId: '01890000-0000-7000-8000-000000000004',
  performedBy: [],
  startedAt: '2027-03-09T04:00:00Z',
  endedAt: '2027-03-09T04:10:00Z',
  why: null,
  ...over,
});

describe('the bolts of a joint’s plan', () => {
  test('an interrupted pass fills the bolts that came first in the pattern', () => {
    const sequence = sequenceOf(content, 8);
    const state = {
      stage: 'part-tight' as const,
      nextPass: 2,
      passes: [pass({}), pass({ pass: 2, finished: false, boltsDone: 3, lastBolt: 3 })],
    };
    const bolts = planBolts(8, sequence, state);
    const firstThree = new Set(sequence?.passes[1]?.steps.flat().slice(0, 3));
    expect(firstThree.size).toBe(3);
    for (const bolt of bolts) expect(bolt.passesDone).toBe(firstThree.has(Number(bolt.label)) ? 2 : 1);
  });

  test('numbered in the order of tightening, the first labels are not neighbours', () => {
    const bolts = planBolts(8, sequenceOf({ ...content, numbering: 'order' }, 8), undefined);
    const first = bolts.find((bolt) => bolt.label === 1)?.clockwiseIndex ?? 0;
    const second = bolts.find((bolt) => bolt.label === 2)?.clockwiseIndex ?? 0;
    expect(Math.abs(first - second)).toBe(4);
  });

  test('without a procedure the bolts are numbered clockwise and empty', () => {
    expect(planBolts(4, undefined, undefined).map((bolt) => [bolt.label, bolt.passesDone])).toEqual([
      [1, 0],
      [2, 0],
      [3, 0],
      [4, 0],
    ]);
  });
});
