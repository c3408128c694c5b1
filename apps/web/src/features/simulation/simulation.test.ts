import { SIMULATION_LIMITS } from '@seatwell/calc';
import { describe, expect, test } from 'vitest';
import { offeredChoices, readChoice, writeChoice } from './choices.ts';
import { edgeView, exaggeration, standingOf } from './edge-view.ts';
import { runSimulation, type SimulationJob } from './run-simulation.ts';

const job: SimulationJob = {
  joint: {
    standard: 'ASME-B16.5',
    size: 'NPS8',
    rating: '150',
    kind: 'weld-neck-pair',
    gasket: { family: 'spiral-wound' },
  },
  target_MPa: 345,
  area: 'root',
  choices: [{ pattern: 'legacy' }, { pattern: 'circular' }],
  passPercents: [30, 70, 100],
  scatter_percent: undefined,
  tilt_mm: undefined,
  limit_percent: 10,
  toolsAtOnce: 1,
};

function resultOf(asked: SimulationJob) {
  const answer = runSimulation(asked);
  if ('refused' in answer) throw new Error(answer.refused.map((item) => item.message).join(' '));
  return answer;
}

describe('the simulation of two patterns', () => {
  const result = resultOf(job);

  test('ends with loads of every bolt, and a band around the lowest', () => {
    for (const { simulation, band } of result.patterns) {
      expect(simulation.steps.at(-1)?.loads_percent).toHaveLength(8);
      expect(band.low.min).toBeLessThanOrEqual(simulation.final.min + 1e-9);
      expect(band.high.min).toBeGreaterThanOrEqual(simulation.final.min - 1e-9);
    }
  });

  test('the bolt tightened last has its load, others may have lost some', () => {
    const last = result.patterns[0]?.simulation.steps.at(-1);
    const bolt = last?.bolts[0] ?? 0;
    expect(last?.loads_percent[bolt - 1]).toBeGreaterThanOrEqual(100 - 1e-6);
  });

  test('advice ranks the patterns, and limits are there to be shown', () => {
    expect(result.advice.patterns.length).toBeGreaterThanOrEqual(2);
    expect(Object.values(SIMULATION_LIMITS).length).toBeGreaterThan(0);
  });

  test('the same inputs give the same band, scatter included', () => {
    const scattered = { ...job, choices: [{ pattern: 'legacy' as const }], scatter_percent: 20 };
    expect(resultOf(scattered).patterns[0]?.band).toEqual(resultOf(scattered).patterns[0]?.band);
  });

  test('a gasket without a curve is refused in words', () => {
    const refused = runSimulation({ ...job, joint: { ...job.joint, gasket: { family: 'jacketed' } } });
    expect(refused).toMatchObject({ refused: [{ code: expect.stringMatching(/^gasket-/) }] });
  });
});

describe('choices in the address', () => {
  test('come back as they were written', () => {
    for (const choice of offeredChoices(24)) expect(readChoice(writeChoice(choice), 'legacy')).toEqual(choice);
  });

  test('what is unknown falls back', () => {
    expect(readChoice('spiral', 'quadrant')).toEqual({ pattern: 'quadrant' });
  });
});

describe('the edge view', () => {
  test('looks across the diameter where the gap differs most', () => {
    expect(edgeView([4.4, 4.2, 4.0, 4.1])).toEqual({
      wide: { bolt: 1, gap_mm: 4.4 },
      narrow: { bolt: 3, gap_mm: 4.0 },
      difference_mm: expect.closeTo(0.4, 9),
    });
  });

  test('exaggerates by round factors, and never shrinks', () => {
    expect(exaggeration(0.4, 30)).toBe(50);
    expect(exaggeration(100, 30)).toBe(1);
    expect(exaggeration(0, 30)).toBe(1);
  });
});

test('loads stand below, within or above the limit', () => {
  expect([0, 30, 80, 95, 110, 111].map((load) => standingOf(load, 10))).toEqual([
    'none',
    'low',
    'below',
    'within',
    'within',
    'above',
  ]);
});
