import { describe, expect, it } from 'vitest';
import {
  CalcRefusal,
  flangeOutside,
  gasketDimensions,
  judgeAlignmentReadings,
  judgeFace,
  judgeRingGroove,
  ringJoint,
} from '../src/index.ts';

const KEY = { standard: 'ASME-B16.5', size: 'NPS8', rating: '300' };
const refused = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    if (error instanceof CalcRefusal) return error.errors.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
  return [];
};

describe('a face', () => {
  it('is judged reading by reading, with limit and source (PCC-1 appendix D, from memory)', () => {
    const judged = judgeFace({
      gasketFamily: 'spiral-wound',
      seatingWidth_mm: 16,
      flatness_mm: 0.25,
      imperfections: [
        { reach_mm: 4, depth_mm: 1.3 },
        { reach_mm: 8, depth_mm: 0.7 },
        { reach_mm: 15, depth_mm: 0.05 },
      ],
    });
    expect(judged.map(({ what, limit, accepted }) => [what, limit, accepted])).toEqual([
      ['flatness', 0.25, true],
      ['imperfection reaching 4 mm', 1.27, false],
      ['imperfection reaching 8 mm', 0.76, true],
      ['imperfection reaching 15 mm', 0, false],
    ]);
    expect(judged.every(({ source }) => source.includes('appendix D'))).toBe(true);
  });

  it('that was not measured is not judged', () => {
    expect(judgeFace({ gasketFamily: 'spiral-wound', seatingWidth_mm: 16 })).toEqual([]);
    expect(refused(() => judgeFace({ gasketFamily: 'cheese', seatingWidth_mm: 16 }))).toEqual([
      'unknown-gasket-family gasketFamily',
    ]);
    expect(refused(() => judgeFace({ gasketFamily: 'jacketed', seatingWidth_mm: 16, flatness_mm: -1 }))).toEqual([
      'out-of-range flatness_mm',
    ]);
  });
});

describe('alignment readings', () => {
  const verdict = (readings: Parameters<typeof judgeAlignmentReadings>[0]) =>
    Object.fromEntries(judgeAlignmentReadings(readings).map(({ what, limit, accepted }) => [what, [limit, accepted]]));

  it('of piping are judged by PCC-1 appendix E', () => {
    expect(
      verdict({
        joint: 'piping',
        offset_mm: 1.6,
        rotation_mm: 3,
        pullIn_percent: 9,
        gasketThickness_mm: 3,
        gaps_mm: [5, 6.5, 6, 5.5],
      }),
    ).toEqual({
      offset: [1.5, false],
      parallelism: [0.8, false],
      rotation: [3, true],
      'pull-in-force': [10, true],
      gap: [6, false],
    });
  });

  it('take the parallelism that was measured before the difference of the gaps', () => {
    expect(verdict({ joint: 'piping', parallelism_mm: 0.8, gaps_mm: [5, 7] })).toEqual({ parallelism: [0.8, true] });
    expect(verdict({ joint: 'piping', gaps_mm: [5] })).toEqual({});
  });

  it('of a machine nozzle stand on the flange’s outside, from its table where nobody entered it', () => {
    const readings = { joint: 'machine-nozzle', offset_mm: 1.5, parallelism_mm: 0.38, shaftMovement_mm: 0.06 } as const;
    expect(verdict({ ...readings, flange: KEY })).toEqual({
      offset: [1.5, true],
      'shaft-movement': [0.05, false],
      parallelism: [0.38, true],
    });
    expect(verdict({ ...readings, flange: KEY, outsideDiameter_mm: 300 }).parallelism).toEqual([0.3, false]);
    expect(judgeAlignmentReadings({ ...readings, flange: KEY })[2]?.source).toMatch(
      /API 686.*outside diameter: ASME B16.5/,
    );
  });

  it('never have a limit of nothing: without any outside diameter they are refused', () => {
    const readings = { joint: 'machine-nozzle', parallelism_mm: 0.1 } as const;
    expect(refused(() => judgeAlignmentReadings(readings))).toEqual(['outside-diameter-missing outsideDiameter_mm']);
    const custom = { standard: 'custom', size: '', rating: '' };
    expect(refused(() => judgeAlignmentReadings({ ...readings, flange: custom }))).toEqual([
      'outside-diameter-missing outsideDiameter_mm',
    ]);
    expect(verdict({ ...readings, flange: custom, gasketOutside_mm: 200 }).parallelism).toEqual([0.2, true]);
  });

  it('take the outside of an EN flange whose bolt count is open, and none of a flange that is not listed', () => {
    expect(flangeOutside({ flange: { standard: 'EN-1092-1', size: 'DN65', rating: 'PN16' } }).outsideDiameter_mm).toBe(
      185,
    );
    const unlisted = { ...KEY, size: 'NPS7' };
    expect(refused(() => flangeOutside({ flange: unlisted }))).toEqual(['outside-diameter-missing outsideDiameter_mm']);
  });

  it('follow B31.3 where it is the basis: 1 mm in 200 mm of the outside', () => {
    const judged = verdict({
      joint: 'piping',
      basis: 'B31.3',
      outsideDiameter_mm: 400,
      parallelism_mm: 2,
      offset_mm: 3.1,
    });
    expect(judged).toEqual({ offset: [3, false], parallelism: [2, true] });
  });
});

describe('a ring joint', () => {
  it('is refused without its dimensions, by the number that the flange’s table gives it', () => {
    expect(refused(() => ringJoint({ flange: KEY }))).toEqual(['ring-groove-data-missing ring']);
    expect(() => ringJoint({ flange: KEY })).toThrow(/ring R\d+/);
    expect(() => ringJoint({})).toThrow(/this ring/);
    expect(() => gasketDimensions({ ...KEY, family: 'ring-joint' })).toThrow(/ring R\d+/);
  });

  it('takes its contact from pitch diameter and width as entered, with their source', () => {
    const ring = { pitchDiameter_mm: 269.88, width_mm: 11.11, source: 'drawing 4711' };
    const joint = ringJoint({ flange: KEY, ring });
    expect(joint.contactOutside_mm - joint.contactInside_mm).toBeCloseTo(2 * 11.11, 9);
    expect((joint.contactOutside_mm + joint.contactInside_mm) / 2).toBeCloseTo(269.88, 9);
    expect(joint).toMatchObject({ source: 'drawing 4711', ringNumber: expect.stringMatching(/^R\d+$/) });
    expect(refused(() => ringJoint({ ring: { ...ring, source: ' ' } }))).toEqual(['source-missing ring.source']);
    expect(refused(() => ringJoint({ ring: { ...ring, width_mm: 300 } }))).toEqual(['ring-impossible ring.width_mm']);
  });

  it('has a groove that is judged by entered tolerances only', () => {
    const depth = { what: 'depth', value: 7.9, nominal: 7.92, minus: 0, plus: 0.4, source: 'drawing' } as const;
    expect(judgeRingGroove([depth])[0]).toMatchObject({ accepted: false, least: 7.92 });
    expect(judgeRingGroove([{ ...depth, value: 8.32 }])[0]?.accepted).toBe(true);
    expect(judgeRingGroove([{ ...depth, value: 8.33 }])[0]?.accepted).toBe(false);
    expect(refused(() => judgeRingGroove([{ ...depth, source: '' }]))).toEqual([
      'ring-groove-data-missing readings.0.source',
    ]);
  });
});
