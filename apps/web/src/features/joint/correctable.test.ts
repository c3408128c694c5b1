import { describe, expect, test } from 'vitest';
import { correctable, corrected, setAt, valueAt } from './correctable.ts';

const recorded = {
  faces: [{ face: 1, condition: 'clean', flatness_mm: 0.1, photo: 'abc', accepted: true }],
  tools: { toolId: '01890000-0000-7000-8000-000000000001', gaugeId: null },
  remark: null,
};

describe('correcting a fact', () => {
  test('offers numbers, words and ticks, and leaves tools and photos bound', () => {
    expect(correctable(recorded).map(({ label, value }) => [label, value])).toEqual([
      ['faces · 1 · face', 1],
      ['faces · 1 · condition', 'clean'],
      ['faces · 1 · flatness, mm', 0.1],
      ['faces · 1 · accepted', true],
    ]);
  });

  test('changes one value and nothing else', () => {
    const after = setAt(recorded, ['faces', 0, 'flatness_mm'], 0.3);
    expect(after).toEqual({ ...recorded, faces: [{ ...recorded.faces[0], flatness_mm: 0.3 }] });
    expect(recorded.faces[0]?.flatness_mm).toBe(0.1);
  });

  test('corrects a setting once, as the dial showed it, and what is reckoned with follows', () => {
    const payload = { rounds: 2, set: { torque_Nm: 542.33, asEntered: { value: 400, unit: 'ft·lbf' } } };
    const [, set] = correctable(payload);
    expect(correctable(payload).map((each) => each.label)).toEqual(['rounds', 'set, ft·lbf']);
    if (!set) throw new Error('The setting cannot be corrected.');
    expect(corrected(payload, set, 200)).toEqual({
      rounds: 2,
      set: { torque_Nm: 271.165, asEntered: { value: 200, unit: 'ft·lbf' } },
    });
    expect(valueAt(corrected(payload, set, 200), set.path)).toBe(200);
  });
});
