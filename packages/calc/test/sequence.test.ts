import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CalcRefusal,
  SEQUENCE_PATTERNS,
  type SequencePattern,
  type SequenceRequest,
  tighteningSequence,
  wrenchTime,
} from '../src/index.ts';
import { LEGACY_ORDERS, ruleOrder } from '../src/sequence/cross-order.ts';

const sorted = (bolts: readonly number[]) => [...bolts].sort((a, b) => a - b);
const allBolts = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

const anyRequest: fc.Arbitrary<SequenceRequest> = fc
  .record({
    boltCount: fc.integer({ min: 4, max: 200 }),
    pattern: fc.constantFrom(...SEQUENCE_PATTERNS),
    numbering: fc.constantFrom('clockwise' as const, 'order' as const),
    toolsWanted: fc.integer({ min: 2, max: 8 }),
    groupIndex: fc.nat(),
    reverse: fc.boolean(),
  })
  .map(({ boltCount, pattern, numbering, toolsWanted, groupIndex, reverse }) => {
    const base = { boltCount, pattern, numbering, reverse };
    if (pattern.startsWith('simultaneous')) return { ...base, tools: Math.min(toolsWanted, boltCount) };
    const groups = allBolts(Math.floor(boltCount / 4)).filter((group) => boltCount % group === 0);
    return { ...base, group: groups[groupIndex % groups.length] ?? 1 };
  });

describe('every sequence', () => {
  it('visits each bolt once', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const { order } = tighteningSequence(request);
        expect(sorted(order.flat())).toEqual(allBolts(request.boltCount));
      }),
    );
  });

  it('brings each bolt to 100 % or, loosening, to nothing, and ends with a whole round', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const { passes } = tighteningSequence(request);
        const last = passes.at(-1);
        expect(sorted(last?.steps.flat() ?? [])).toEqual(allBolts(request.boltCount));
        expect(last?.percent).toBe(request.reverse === true ? 0 : 100);
        const kinds = passes.map((pass) => pass.kind);
        if (request.reverse !== true) expect(kinds.slice(-2)).toEqual(['final-round', 'relaxation']);
        else expect(new Set(kinds)).toEqual(new Set(['pattern']));
      }),
    );
  });

  it('counts a move for each time that a tool is set on a nut', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const { passes, moves } = tighteningSequence(request);
        expect(moves).toBe(passes.flatMap((pass) => pass.steps.flat()).length);
      }),
    );
  });

  it('is the same plan in both numberings', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const byClock = tighteningSequence({ ...request, numbering: 'clockwise' });
        const byOrder = tighteningSequence({ ...request, numbering: 'order' });
        const clockOf = new Map(byOrder.positions.map(({ label, clockwiseIndex }) => [label, clockwiseIndex]));
        const translated = byOrder.passes.map((pass) => pass.steps.map((step) => step.map((l) => clockOf.get(l))));
        expect(translated).toEqual(byClock.passes.map((pass) => pass.steps));
      }),
    );
  });

  it('numbers by order so that tightening runs 1, 2, 3 and so on', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const { order } = tighteningSequence({ ...request, numbering: 'order', reverse: false });
        expect(order.flat()).toEqual(allBolts(request.boltCount));
      }),
    );
  });

  it('is mirrored when seen from the other side, bolt 1 and all labels staying where they are', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const here = tighteningSequence(request);
        const there = tighteningSequence({ ...request, viewedFrom: 'other-side' });
        expect(there.order).toEqual(here.order);
        const angleHere = new Map(here.positions.map(({ label, angle_deg }) => [label, angle_deg]));
        for (const { label, angle_deg, clockwiseIndex } of there.positions) {
          expect(angle_deg).toBeCloseTo((360 - (angleHere.get(label) ?? Number.NaN)) % 360, 9);
          expect(angle_deg).toBeCloseTo(((clockwiseIndex - 1) * 360) / request.boltCount, 9);
        }
      }),
    );
  });

  it('loosens in the reverse of the tightening order', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const tighten = tighteningSequence({ ...request, reverse: false });
        const loosen = tighteningSequence({ ...request, reverse: true });
        expect(loosen.order.flat()).toEqual([...tighten.order.flat()].reverse());
      }),
    );
  });
});

describe('balance while the cross and quadrant patterns proceed', () => {
  const balanced: fc.Arbitrary<[number, SequencePattern]> = fc.tuple(
    fc.integer({ min: 1, max: 50 }).map((quarter) => 4 * quarter),
    fc.constantFrom('legacy' as const, 'quadrant' as const, 'modified-legacy' as const),
  );

  it('tightens opposite bolts one after the other', () => {
    fc.assert(
      fc.property(balanced, ([boltCount, pattern]) => {
        const bolts = tighteningSequence({ boltCount, pattern, numbering: 'clockwise' }).order.flat();
        for (let i = 0; i < boltCount; i += 2) {
          expect(Math.abs((bolts[i] ?? 0) - (bolts[i + 1] ?? 0))).toBe(boltCount / 2);
        }
      }),
    );
  });

  it('never has two more bolts tightened in one quadrant than in another', () => {
    fc.assert(
      fc.property(balanced, ([boltCount, pattern]) => {
        const bolts = tighteningSequence({ boltCount, pattern, numbering: 'clockwise' }).order.flat();
        const tightened = [0, 0, 0, 0];
        for (const bolt of bolts) {
          const quadrant = Math.floor(((bolt - 1) * 4) / boltCount);
          tightened[quadrant] = (tightened[quadrant] ?? 0) + 1;
          expect(Math.max(...tightened) - Math.min(...tightened)).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('keeps opposite pairs together for even counts that are no multiple of four', () => {
    for (const boltCount of [6, 10, 14, 18, 22, 26, 30, 50, 198]) {
      const bolts = tighteningSequence({ boltCount, pattern: 'legacy', numbering: 'clockwise' }).order.flat();
      for (let i = 0; i < boltCount; i += 2) {
        expect(Math.abs((bolts[i] ?? 0) - (bolts[i + 1] ?? 0))).toBe(boltCount / 2);
      }
    }
  });

  it('keeps neighbouring fours apart from five places a quadrant upwards', () => {
    for (const boltCount of [20, 24, 28, 32, 36, 40, 44, 48, 52, 56, 60, 64, 96, 200]) {
      const starts = ruleOrder(boltCount).filter((_, i) => i % 4 === 0);
      const quarter = boltCount / 4;
      for (let i = 1; i < starts.length; i++) {
        const apart = Math.abs((starts[i] ?? 0) - (starts[i - 1] ?? 0));
        expect(Math.min(apart, quarter - apart)).toBeGreaterThan(1);
      }
    }
  });

  it('has a rule that reproduces the listed orders, 12 bolts apart', () => {
    for (const count of [4, 8, 16, 20, 24]) expect(ruleOrder(count)).toEqual(LEGACY_ORDERS[count]);
  });
});

describe('patterns of other kinds', () => {
  it('spaces simultaneous tools equally in every step', () => {
    const { order } = tighteningSequence({
      boltCount: 24,
      pattern: 'simultaneous',
      tools: 4,
      numbering: 'clockwise',
    });
    for (const step of order) {
      expect(step.map((bolt) => bolt - (step[0] ?? 0))).toEqual([0, 6, 12, 18]);
    }
  });

  it('takes the four leading bolts of the circular pattern through all percents first', () => {
    const { passes } = tighteningSequence({
      boltCount: 12,
      pattern: 'circular',
      numbering: 'clockwise',
      passPercents: [25, 60, 100],
    });
    expect(passes.map(({ percent, steps }) => [percent, steps.flat().join(' ')])).toEqual([
      [25, '1 7 4 10'],
      [60, '1 7 4 10'],
      [100, '1 7 4 10'],
      [100, '1 2 3 4 5 6 7 8 9 10 11 12'],
      [100, '1 2 3 4 5 6 7 8 9 10 11 12'],
      [100, '1 2 3 4 5 6 7 8 9 10 11 12'],
    ]);
  });

  it('raises the percent within one cross visit in the modified legacy pattern', () => {
    const { passes } = tighteningSequence({
      boltCount: 12,
      pattern: 'modified-legacy',
      numbering: 'clockwise',
    });
    expect(passes.slice(0, 3).map(({ percent, steps }) => [percent, steps.flat().join(' ')])).toEqual([
      [30, '1 7 4 10'],
      [70, '2 8 5 11'],
      [100, '3 9 6 12'],
    ]);
  });

  it('puts two tools on opposite bolts of the legacy pattern', () => {
    const { order } = tighteningSequence({
      boltCount: 8,
      pattern: 'legacy',
      tools: 2,
      numbering: 'clockwise',
    });
    expect(order).toEqual([
      [1, 5],
      [3, 7],
      [2, 6],
      [4, 8],
    ]);
  });
});

describe('a sequence without meaning is refused', () => {
  const code = (request: Partial<SequenceRequest>) => {
    try {
      tighteningSequence({ boltCount: 16, pattern: 'legacy', numbering: 'clockwise', ...request });
    } catch (error) {
      if (error instanceof CalcRefusal) return error.code;
      throw error;
    }
    return 'accepted';
  };

  it.each([
    [{ boltCount: 3 }, 'out-of-range'],
    [{ boltCount: 201 }, 'out-of-range'],
    [{ boltCount: 8.5 }, 'not-a-whole-number'],
    [{ group: 3 }, 'group-does-not-fit'],
    [{ group: 8 }, 'group-does-not-fit'],
    [{ group: 2, tools: 2 }, 'group-and-tools'],
    [{ pattern: 'simultaneous' as const }, 'tools-must-be-given'],
    [{ pattern: 'simultaneous' as const, tools: 4, group: 2 }, 'group-not-with-pattern'],
    [{ pattern: 'circular' as const, tools: 2 }, 'tools-not-with-pattern'],
    [{ tools: 17 }, 'more-tools-than-bolts'],
    [{ passPercents: [30, 70] }, 'passes-must-rise-to-100'],
    [{ passPercents: [70, 30, 100] }, 'passes-must-rise-to-100'],
    [{ passPercents: [] }, 'passes-must-rise-to-100'],
  ])('%j: %s', (request, expected) => {
    expect(code(request)).toBe(expected);
  });
});

describe('cautions', () => {
  const codes = (request: Omit<Parameters<typeof tighteningSequence>[0], 'numbering'>) =>
    tighteningSequence({ ...request, numbering: 'clockwise' }).warnings.map(({ code }) => code);

  it('are none where a list gives the order and one wrench turns one nut', () => {
    for (const boltCount of [4, 8, 12, 16, 20, 24]) expect(codes({ boltCount, pattern: 'legacy' })).toEqual([]);
  });

  it('offer grouping as the trade does it, from 36 bolts up and to single bolts only', () => {
    expect(codes({ boltCount: 36, pattern: 'legacy' })).toContain('grouping-usual');
    expect(codes({ boltCount: 32, pattern: 'legacy' })).not.toContain('grouping-usual');
    expect(codes({ boltCount: 36, group: 3, pattern: 'legacy' })).not.toContain('grouping-usual');
    expect(codes({ boltCount: 36, group: 3, pattern: 'legacy' })).toContain('grouping-loads-locally');
  });

  it('keep quadrant for 16 bolts and modified legacy for 12 places and more', () => {
    expect(codes({ boltCount: 16, pattern: 'quadrant' })).not.toContain('pattern-for-16-and-more');
    expect(codes({ boltCount: 12, pattern: 'quadrant' })).toContain('pattern-for-16-and-more');
    expect(codes({ boltCount: 12, pattern: 'modified-legacy' })).not.toContain('pattern-needs-more-places');
    expect(codes({ boltCount: 8, pattern: 'modified-legacy' })).toContain('pattern-needs-more-places');
  });

  it('name the source of pressure and the spacing of several tools', () => {
    expect(codes({ boltCount: 12, tools: 4, pattern: 'simultaneous' })).toEqual(['tools-on-one-source']);
    expect(codes({ boltCount: 12, tools: 5, pattern: 'simultaneous' })).toContain('tools-not-equally-spaced');
  });
});

describe('modified legacy', () => {
  it('takes the rest to 100 % in its last pass, be it four places or more', () => {
    const { passes } = tighteningSequence({ boltCount: 16, pattern: 'modified-legacy', numbering: 'clockwise' });
    const pattern = passes.filter(({ kind }) => kind === 'pattern');
    expect(pattern.map(({ percent, steps }) => [percent, steps.length])).toEqual([
      [30, 4],
      [70, 4],
      [100, 8],
    ]);
    expect(sorted(pattern.flatMap(({ steps }) => steps.flat()))).toEqual(allBolts(16));
  });
});

describe('refused requests', () => {
  const limitOf = (request: Omit<SequenceRequest, 'numbering'>) => {
    try {
      tighteningSequence({ ...request, numbering: 'clockwise' });
    } catch (error) {
      if (error instanceof CalcRefusal) return error.errors[0]?.limit;
      throw error;
    }
    return 'accepted';
  };

  it('name the limit: percents to 100, two tools at least, groups that fit', () => {
    expect(limitOf({ boltCount: 8, pattern: 'legacy', passPercents: [30, 90] })).toBe(100);
    expect(limitOf({ boltCount: 8, pattern: 'simultaneous' })).toBe(2);
    expect(limitOf({ boltCount: 12, pattern: 'legacy', group: 5 })).toBe('1, 2, 3');
    expect(limitOf({ boltCount: 8, pattern: 'circular', tools: 2 })).toBe(1);
  });
});

describe('the time of the wrench', () => {
  it('is moves times seconds over the tools, in hours', () => {
    const sequence = tighteningSequence({ boltCount: 12, pattern: 'legacy', numbering: 'clockwise' });
    expect(sequence.moves).toBe(60);
    expect(wrenchTime({ sequence, secondsPerMove: 90, tools: 1 }).hours).toBeCloseTo(1.5, 9);
    expect(wrenchTime({ sequence, secondsPerMove: 90, tools: 3 }).hours).toBeCloseTo(0.5, 9);
  });
});

describe('the positions of the bolts', () => {
  it('are one for each bolt, clockwise from the datum, equally far apart', () => {
    const { positions } = tighteningSequence({ boltCount: 8, pattern: 'legacy', numbering: 'clockwise' });
    expect(positions).toEqual(
      allBolts(8).map((bolt) => ({ label: bolt, clockwiseIndex: bolt, angle_deg: (bolt - 1) * 45 })),
    );
  });
});
