import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CalcRefusal, loadFromTorque, parseThread, threadGeometry, torqueFromLoad } from '../src/index.ts';

describe('thread designations', () => {
  it.each([
    ['M20', 'M20'],
    ['m20', 'M20'],
    ['M20x2.5', 'M20'],
    ['M20×1.5', 'M20x1.5'],
    ['M 30 x 3', 'M30x3'],
    ['3/4-10 UNC', '3/4-10 UNC'],
    ['3/4-10', '3/4-10 UNC'],
    ['0.75-10 UNC', '3/4-10 UNC'],
    ['1 1/8-8 UN', '1 1/8-8 UN'],
    ['1-1/8-8 UN', '1 1/8-8 UN'],
    ['1-1/8-8UN', '1 1/8-8 UN'],
    ['1-1/8-8', '1 1/8-8 UN'],
    ['1-8 UNC', '1-8 UNC'],
    ['2-1/4-8 UN', '2 1/4-8 UN'],
    ['3/4-16 UNF', '3/4-16 UNF'],
  ])('%s is %s', (text, designation) => {
    expect(parseThread(text).designation).toBe(designation);
    expect(parseThread(parseThread(text).designation)).toEqual(parseThread(text));
  });

  it.each(['', 'M', 'M20x', 'M20x7', 'M8x3', '3/0-10 UNC', '3/4', 'UNC', '9-8 UN', '3/4-10 XYZ', 'M7.3'])(
    'refuses "%s"',
    (text) => {
      expect(() => parseThread(text)).toThrow(CalcRefusal);
    },
  );

  it('asks for the pitch of a large metric thread', () => {
    expect(() => parseThread('M100')).toThrow(/Give the pitch/);
  });
});

describe('areas', () => {
  it('names the basis of the root area', () => {
    expect(threadGeometry({ thread: 'M16' }).rootAreaBasis).toBe('ISO-A3');
    expect(threadGeometry({ thread: '1-8 UNC' }).rootAreaBasis).toBe('ASME-B1.1-minor');
    expect(threadGeometry({ thread: '1-8 UNC' }).pcc1RootArea_mm2).toBeUndefined();
  });
});

describe('torque and load', () => {
  const thread = fc.constantFrom('M12', 'M20', 'M36x3', '3/4-10 UNC', '1 1/2-8 UN');
  const model = fc.oneof(
    fc.record({
      model: fc.constant('nut-factor' as const),
      nutFactor: fc.double({ min: 0.08, max: 0.4, noNaN: true }),
    }),
    fc.record({
      model: fc.constant('friction' as const),
      threadFriction: fc.double({ min: 0.04, max: 0.4, noNaN: true }),
      bearingFriction: fc.double({ min: 0.04, max: 0.4, noNaN: true }),
      bearingOuterDiameter_mm: fc.double({ min: 50, max: 80, noNaN: true }),
      bearingInnerDiameter_mm: fc.double({ min: 14, max: 45, noNaN: true }),
    }),
  );

  it('invert each other', () => {
    fc.assert(
      fc.property(thread, model, fc.double({ min: 1e3, max: 1e6, noNaN: true }), (name, friction, load_N) => {
        const { torque_Nm } = torqueFromLoad({ thread: name, load_N, ...friction });
        const back = loadFromTorque({ thread: name, torque_Nm, ...friction });
        expect(back.load_N).toBeCloseTo(load_N, 3);
      }),
    );
  });

  it('refuses a load of no number and a bearing face inside out', () => {
    expect(() => torqueFromLoad({ thread: 'M20', load_N: Number.NaN, model: 'nut-factor', nutFactor: 0.2 })).toThrow(
      CalcRefusal,
    );
    expect(() =>
      torqueFromLoad({
        thread: 'M20',
        load_N: 1e5,
        model: 'friction',
        threadFriction: 0.12,
        bearingFriction: 0.12,
        bearingOuterDiameter_mm: 20,
        bearingInnerDiameter_mm: 22,
      }),
    ).toThrow(/outside must be larger/);
  });

  it('warns outside the usual range of friction, 0.08 to 0.35 and 0.04 to 0.4 (common practice)', () => {
    const nut = (nutFactor: number) =>
      torqueFromLoad({ thread: 'M20', load_N: 1e5, model: 'nut-factor', nutFactor }).warnings.length;
    expect([0.0795, 0.0802, 0.349, 0.352].map(nut)).toEqual([1, 0, 0, 1]);
    const faces = { bearingOuterDiameter_mm: 30, bearingInnerDiameter_mm: 22 };
    const both = (threadFriction: number, bearingFriction: number) =>
      torqueFromLoad({ thread: 'M20', load_N: 1e5, model: 'friction', threadFriction, bearingFriction, ...faces })
        .warnings.length;
    expect([0.0395, 0.0402, 0.399, 0.402].map((friction) => both(friction, 0.1))).toEqual([1, 0, 0, 1]);
    expect([0.0395, 0.0402, 0.399, 0.402].map((friction) => both(0.1, friction))).toEqual([1, 0, 0, 1]);
  });

  it('warns about friction far from the usual', () => {
    const { warnings } = torqueFromLoad({ thread: 'M20', load_N: 1e5, model: 'nut-factor', nutFactor: 0.02 });
    expect(warnings.map((warning) => warning.code)).toEqual(['friction-unusual']);
  });
});
