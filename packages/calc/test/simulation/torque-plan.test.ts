import { describe, expect, it } from 'vitest';
import {
  CalcRefusal,
  simulateTightening,
  standardJoint,
  targetWindow,
  torquePlan,
  windowCap,
} from '../../src/index.ts';

const KEY = { standard: 'ASME-B16.5', size: 'NPS24', rating: '300' } as const;
const JOINT = { ...KEY, kind: 'weld-neck-pair', gasket: { family: 'spiral-wound' } } as const;

/** A target by torque on class 300 NPS 24; gasket limits are made up for the test. */
const answerOf = (
  grade: string,
  boltStress_MPa: number,
  method: 'hydraulic-wrench' | 'tensioner' = 'hydraulic-wrench',
) =>
  targetWindow({
    flange: KEY,
    gasket: {
      family: 'spiral-wound',
      contactOutside_mm: 679,
      contactInside_mm: 647.7,
      limits: { seating_MPa: 70, operating_MPa: 35, target_MPa: 150, maximum_MPa: 400, source: 'test' },
    },
    bolting: { grade, condition: 'new' },
    service: { pressure_MPa: 3, temperature_C: 100 },
    lubricant: { nutFactor: 0.15, source: 'test' },
    method,
    area: 'tensile',
    policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.75, scatter_percent: 10 },
    target: { boltStress_MPa },
  });

const planOf = (grade: string, boltStress_MPa: number) =>
  torquePlan({
    joint: JOINT,
    answer: answerOf(grade, boltStress_MPa),
    toolDivision_Nm: 20,
    setValues: 4,
    usual: { pattern: 'legacy' },
  });

const code = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof CalcRefusal) return error.code;
    throw error;
  }
  throw new Error('was not refused');
};

describe('torques of computed loads', () => {
  const answer = answerOf('B7', 345);
  const plan = planOf('B7', 345);

  it('stay under the lowest limit of the window, on the division of the wrench, four to a pass at most', () => {
    expect(plan.worthwhile).toBe(true);
    const highest = Math.min(...answer.window.upper.filter((limit) => !limit.advisory).map((l) => l.boltStress_MPa));
    for (const { setValues_Nm } of plan.passes) {
      expect(setValues_Nm.length).toBeLessThanOrEqual(4);
      for (const torque of setValues_Nm) {
        expect(torque % 20).toBeCloseTo(0, 9);
        expect((torque / (answer.tool.torque_Nm ?? 0)) * 345).toBeLessThanOrEqual(highest * (1 + 1e-9));
      }
    }
  });

  it('simulated as they will be set end where the plan says, with the band around', () => {
    const prepared = standardJoint(JOINT);
    const { final } = simulateTightening({
      joint: prepared.joint,
      target_N: answer.target.boltLoad_N,
      passes: plan.passes.map(({ steps, setValues_Nm }) => ({
        steps: steps.map(({ bolt, setValue }) => ({
          bolts: [bolt],
          load_percent: ((setValues_Nm[setValue] ?? 0) / (answer.tool.torque_Nm ?? 0)) * 100,
        })),
      })),
    });
    expect(final.min).toBeCloseTo(plan.final?.min ?? 0, 3);
    expect(final.max).toBeCloseTo(plan.final?.max ?? 0, 3);
    expect(plan.band?.min).toBeLessThan(final.min);
    expect(plan.band?.max).toBeGreaterThan(final.max);
    expect(plan.movesSaved).toBeGreaterThan(24);
  });

  it('take a low cap from a weak grade, and say where nothing is to gain', () => {
    expect(windowCap(answerOf('B7M', 345)).percent).toBeLessThan(windowCap(answer).percent);
    const weak = planOf('B7M', 405);
    expect(weak).toMatchObject({ worthwhile: false, passes: [], movesSaved: 0 });
    expect(weak.statement.message).toContain('keep conventional passes');
  });

  it('are refused without a torque, and where the target is not inside its window', () => {
    const ask = (of: ReturnType<typeof answerOf>) => () =>
      torquePlan({ joint: JOINT, answer: of, toolDivision_Nm: 20, setValues: 4, usual: { pattern: 'legacy' } });
    expect(code(ask(answerOf('B7', 345, 'tensioner')))).toBe('computed-loads-need-torque');
    expect(code(ask(answerOf('B7', 30)))).toBe('computed-loads-outside-window');
  });
});
