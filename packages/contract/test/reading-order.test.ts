import { describe, expect, test } from 'vitest';
import { leftToRightStretches, withoutReadingOrder, withReadingOrder } from '../src/reading-order.ts';

const stretches = (text: string) => leftToRightStretches(text).map(({ start, end }) => text.slice(start, end));

describe('from right to left', () => {
  test.each([
    ['10-01-SP10018-341', ['10-01-SP10018-341']],
    ['الوصلة 10-01-SP10018-341 مشدودة جزئيًا', ['10-01-SP10018-341']],
    ['12 × M24', ['12 × M24']],
    ['البراغي 8 × ⅝', ['8 × ⅝']],
    ['القيمة المستهدفة: 281\u202fMPa على مساحة الشد، 317\u202fN·m', ['281\u202fMPa', '317\u202fN·m']],
    ['كل البراغي ضمن ±10\u202f% من الهدف', ['±10\u202f%']],
    ['الخط 8"-10-01-130', ['8"-10-01-130']],
    ['الحرارة -40 °C', ['-40 °C']],
    ['الجولة 2، البرغي 6', ['2', '6']],
    ['حسب (ASME PCC-1, from memory)', ['(ASME PCC-1, from memory)']],
    ['تُركت (بعد 6)', ['6']],
    ['ينقص (12 وصلة)', ['12']],
    ['DN 150 · PN 40 · 8 براغٍ', ['DN 150 · PN 40', '8']],
    ['Andrei Popa, Greta Lind, 3 غيرهما', ['Andrei Popa, Greta Lind', '3']],
    ['الجولة 1: 30 % من العزم', ['1', '30 %']],
    ['في 06:00', ['06:00']],
    ['مشدودة', []],
    [' · ', []],
  ])('%s: what reads from left to right', (text, expected) => {
    expect(stretches(text)).toEqual(expected);
  });

  test('a sentence that was recorded in Latin letters keeps its full stop at its end', () => {
    expect(stretches('Nut 1 turned by hand: loosened.')).toEqual(['Nut 1 turned by hand: loosened.']);
  });

  test('marks come off again without a trace', () => {
    const text = 'الوصلة 10-01-SP10018-341، 12 × M24';
    expect(withReadingOrder(text)).toBe('الوصلة \u206610-01-SP10018-341\u2069، \u206612 × M24\u2069');
    expect(withoutReadingOrder(withReadingOrder(text))).toBe(text);
  });
});
