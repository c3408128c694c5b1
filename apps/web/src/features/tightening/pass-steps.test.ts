import type { ProcedureContent } from '@seatwell/contract';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { startingContent } from '../engineering/procedure-draft.ts';
import type { RunningPass } from './draft.ts';
import { boltsIn, lastBoltOf, tighteningPlan, withComputedPasses } from './pass-steps.ts';
import { setOfStep } from './set-of-step.ts';

const content = (more: Partial<ProcedureContent> = {}): ProcedureContent => ({
  ...startingContent,
  method: 'torque-wrench',
  ...more,
});

describe('the steps of a pass', () => {
  test('eight bolts, legacy, numbered clockwise: across the flange', () => {
    const plan = tighteningPlan(content(), 8);
    expect(plan.passes.map((pass) => pass.percent)).toEqual([30, 70, 100]);
    expect(plan.passes[0]?.steps.flat()).toEqual([1, 5, 3, 7, 2, 6, 4, 8]);
    expect(plan.round.steps.flat()).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test('numbered in the order of tightening, the first pass counts up and the round goes by place', () => {
    const plan = tighteningPlan(content({ numbering: 'order' }), 8);
    expect(plan.passes[0]?.steps.flat()).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(plan.round.steps.flat()).toEqual(plan.positions.map((position) => position.label));
  });

  test('four tools at once: a step is four bolts', () => {
    const plan = tighteningPlan(content({ pattern: 'simultaneous', tools: 4 }), 16);
    expect(plan.atOnce).toBe(true);
    expect(plan.passes[0]?.steps.map((step) => step.length)).toEqual([4, 4, 4, 4]);
    expect(boltsIn(plan.passes[0]?.steps ?? [])).toBe(16);
  });

  test('the circular pattern is recorded in as many passes as it has percents, the last with every bolt', () => {
    const plan = tighteningPlan(content({ pattern: 'circular' }), 12);
    expect(plan.passes).toHaveLength(3);
    expect(boltsIn(plan.passes[2]?.steps ?? [])).toBe(12);
  });

  test('every bolt is in the last pass and in the round, whatever pattern and count', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: 64 }),
        fc.constantFrom('legacy' as const, 'quadrant' as const, 'circular' as const, 'modified-legacy' as const),
        fc.constantFrom('clockwise' as const, 'order' as const),
        (count, pattern, numbering) => {
          const plan = tighteningPlan(content({ pattern, numbering }), count);
          const all = Array.from({ length: count }, (_, index) => index + 1);
          expect(plan.round.steps.flat().sort((a, b) => a - b)).toEqual(all);
          // Modified legacy brings its first fours to the full value in the final round only.
          if (pattern !== 'modified-legacy') expect(boltsIn(plan.passes[2]?.steps ?? [])).toBe(count);
        },
      ),
    );
  });

  test('the last bolt is the last of its step', () => {
    expect(
      lastBoltOf(
        [
          [1, 5],
          [3, 7],
        ],
        1,
      ),
    ).toBe(5);
    expect(
      lastBoltOf(
        [
          [1, 5],
          [3, 7],
        ],
        0,
      ),
    ).toBeNull();
  });
});

describe('computed loads', () => {
  const computed = [
    {
      level_percent: 92,
      setValues_Nm: [240, 300],
      steps: [1, 2, 3, 4, 5, 6, 7, 8].map((bolt) => ({ bolt, setValue: bolt <= 3 ? 1 : 0 })),
    },
  ];
  const plan = withComputedPasses(tighteningPlan(content({ numbering: 'order' }), 8), computed);
  const torque = (value: number) => ({ torque_Nm: value, asEntered: { value, unit: 'N·m' } });
  const running: RunningPass = {
    kind: 'pass',
    pass: 1,
    stepsDone: 0,
    rounds: 1,
    startedAt: '2027-03-02T14:00:00.000Z',
    performedBy: [],
    tools: { toolId: '', pumpId: null, gaugeId: null },
    set: torque(300),
    sets: [torque(240), torque(300)],
    gaps_mm: null,
  };

  test('go by place, in the numbers that are chalked on the flange', () => {
    expect(plan.passes).toHaveLength(1);
    expect(plan.passes[0]?.steps.flat()).toEqual(plan.positions.map(({ label }) => label));
  });

  test('name the value of each bolt, and say where the tool is set anew and for how many bolts', () => {
    expect(setOfStep(plan, running, 0)).toEqual({ set: torque(300), changed: true, following: 3 });
    expect(setOfStep(plan, running, 1)).toEqual({ set: torque(300), changed: false, following: 2 });
    expect(setOfStep(plan, running, 3)).toEqual({ set: torque(240), changed: true, following: 5 });
  });

  test('the final round has one value, the full one', () => {
    const round: RunningPass = { ...running, kind: 'final-round', pass: 2, set: torque(250) };
    expect(setOfStep(plan, round, 4)).toEqual({ set: torque(250), changed: false, following: 0 });
  });
});
