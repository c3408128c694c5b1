import { SIMULATION_LIMITS } from '@seatwell/calc';
import { describe, expect, test } from 'vitest';
import english from '../../texts/en/simulation.json';
import { offeredChoices, readChoice, writeChoice } from './choices.ts';
import { edgeView, equalWithinBand, exaggeration, standingOf } from './edge-view.ts';
import { jobOf } from './job.ts';
import { placesOf } from './places.ts';
import { runSimulation, type SimulationJob } from './run-simulation.ts';
import { LIMIT_TEXTS } from './validity.tsx';

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
  computed: undefined,
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

describe('computed loads beside a pattern', () => {
  const large: SimulationJob = {
    ...job,
    joint: { ...job.joint, size: 'NPS24', rating: '300' },
    area: 'tensile',
    choices: [{ pattern: 'legacy' }, 'computed-loads'],
    scatter_percent: 15,
    computed: {
      grade: 'B7',
      nutFactor: 0.15,
      boltShare: 0.9,
      scatter_percent: 15,
      gasketMaximum_MPa: undefined,
      division_Nm: 20,
      setValues: 3,
    },
  };

  test('save moves on a large flange, stay under the cap, and are simulated as rounded', () => {
    const { computed, patterns } = resultOf(large);
    if (!computed || 'refused' in computed) throw new Error('no computed loads');
    expect(computed.worthwhile).toBe(true);
    expect(computed.movesSaved).toBeGreaterThan(0);
    for (const { setValues_Nm } of computed.passes) {
      expect(setValues_Nm.length).toBeLessThanOrEqual(3);
      for (const value of setValues_Nm)
        expect(value / computed.torque_Nm).toBeLessThanOrEqual(computed.cap.percent / 100);
    }
    expect(patterns[1]?.choice).toBe('computed-loads');
    expect(patterns[1]?.simulation.final.min).toBeCloseTo(computed.final?.min ?? 0, 6);
  });

  test('say where nothing is to gain, and then stand in no column', () => {
    const weak = resultOf({ ...large, computed: { ...large.computed!, gasketMaximum_MPa: 100 } });
    expect(weak.computed).toMatchObject({ worthwhile: false, movesSaved: 0 });
    expect(weak.patterns).toHaveLength(1);
  });

  test('are not worked out while an input is missing, and refusals are told', () => {
    expect(resultOf({ ...large, computed: undefined }).computed).toBeUndefined();
    const impossible = resultOf({ ...large, computed: { ...large.computed!, nutFactor: 0.01 } });
    expect(impossible.computed).toMatchObject({ refused: [{ code: 'friction-impossible' }] });
  });

  test('need every input of the cap from the address', () => {
    const inputs = { standard: 'ASME-B16.5', size: 'NPS24', rating: '300', family: 'spiral-wound', stress_MPa: '345' };
    const cap = { grade: 'B7', nutFactor: '0.15', boltShare_percent: '90', scatter_percent: '15', division_Nm: '20' };
    expect(jobOf({ ...inputs, ...cap }).job?.computed).toMatchObject({ boltShare: 0.9, setValues: 3 });
    for (const name of Object.keys(cap))
      expect(jobOf({ ...inputs, ...cap, [name]: undefined }).job?.computed).toBeUndefined();
  });

  test('bolts of a set value are read as ranges', () => {
    expect(placesOf([1, 2, 3, 5, 7, 8])).toBe('1–3, 5, 7–8');
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

test('patterns whose bands overlap end alike', () => {
  const band = (low: number, high: number) => ({ band: { low: { min: low }, high: { min: high } } });
  expect(equalWithinBand([band(40, 60), band(55, 80)])).toBe(true);
  expect(equalWithinBand([band(40, 54), band(55, 80)])).toBe(false);
  expect(equalWithinBand([band(40, 54)])).toBe(false);
});

test('the limits of the catalogue are the sentences of the calculation', () => {
  const texts: Readonly<Record<string, string>> = english;
  for (const [key, sentence] of Object.entries(SIMULATION_LIMITS))
    expect(texts[LIMIT_TEXTS[key as keyof typeof LIMIT_TEXTS]]).toBe(sentence);
});
