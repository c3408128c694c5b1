import type { QuantityName } from '@seatwell/contract';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createFormatter, type FormatChoice } from './formatter.ts';
import { inchFraction, threadName } from './fractions.ts';

const shifts = [
  { name: 'Day', starts: '06:00', ends: '18:00' },
  { name: 'Night', starts: '18:00', ends: '06:00' },
];
const make = (choice: Partial<FormatChoice> = {}) =>
  createFormatter({ language: 'en', timeZone: 'Europe/London', system: 'SI', shifts, ...choice });
const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, ' ');

describe('quantities', () => {
  const si = make();
  const us = make({ system: 'US', language: 'en-US' });

  test.each<[QuantityName, number, string, string]>([
    // Expected by the exact definitions of foot, pound and inch; computed by hand, from memory of the factors.
    ['torque', 475, '475 N·m', '350 ft·lbf'],
    ['torque', 1153, '1,153 N·m', '850 ft·lbf'],
    ['pressure', 22.2, '222 bar', '3,220 psi'],
    ['stress', 276, '276 MPa', '40.0 ksi'],
    ['load', 140_000, '140 kN', '31.5 kip'],
    ['length', 170, '170.0 mm', '6.69 in'],
    ['gap', 3.1, '3.10 mm', '0.122 in'],
    ['temperature', 100, '100 °C', '212 °F'],
    ['temperature', -40, '-40 °C', '-40 °F'],
    ['torque', 0, '0 N·m', '0 ft·lbf'],
  ])('shows %s %d as %s or %s', (name, held, inSi, inUs) => {
    expect(plain(si.quantity(name, held))).toBe(inSi);
    expect(plain(us.quantity(name, held))).toBe(inUs);
  });

  test('shows pressure in the unit somebody chose', () => {
    expect(plain(make({ units: { pressure: 'MPa' } }).quantity('pressure', 22.2))).toBe('22.2 MPa');
  });

  test('refuses a unit that does not measure the quantity', () => {
    expect(() => make({ units: { torque: 'bar' } }).quantity('torque', 1)).toThrow(/bar does not measure torque/);
  });

  test('shows a dash for what is missing and never a number that is none', () => {
    expect(si.quantity('torque', undefined)).toBe('–');
    expect(si.value('gap', null)).toBe('–');
    expect(() => si.quantity('torque', Number.NaN)).toThrow(/NaN/);
    expect(() => si.count(Number.POSITIVE_INFINITY)).toThrow(/Infinity/);
  });

  test('does not show a negative zero', () => {
    expect(si.value('gap', -0.001)).toBe('0.00');
  });

  test('gives back what was typed, in the unit of the API', () => {
    expect(us.parse('temperature', '212')).toEqual({ kind: 'number', value: 100 });
    const names: QuantityName[] = [
      'torque',
      'pressure',
      'stress',
      'length',
      'gap',
      'load',
      'temperature',
      'distance',
      'mass',
    ];
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.double({ min: 0.01, max: 1e6, noNaN: true }), (name, held) => {
        expect(us.toHeld(name, us.toShown(name, held))).toBeCloseTo(held, 6);
      }),
    );
  });

  test('follows the language', () => {
    expect(plain(make({ language: 'de' }).quantity('stress', 12.34))).toBe('12,3 MPa');
    expect(plain(make({ language: 'de' }).percent(0.705, 1))).toBe('70,5 %');
  });

  test('shows ranges, shares and sizes', () => {
    expect(plain(si.range('stress', 220.4, 331.2))).toBe('220–331 MPa');
    expect(plain(si.percent(0.7))).toBe('70 %');
    expect(plain(si.bytes(3_210_000))).toBe('3.2 MB');
    expect(plain(si.inches(1.125))).toBe('1⅛ in');
    expect(plain(si.inches(1.3))).toBe('1.300 in');
  });
});

describe('inch sizes', () => {
  test.each([
    [0.5, '½'],
    [0.625, '⅝'],
    [1.125, '1⅛'],
    [2.5, '2½'],
    [3, '3'],
    [0.8125, '13/16'],
    [1.4375, '1 7/16'],
    [28.575 / 25.4, '1⅛'],
    [28.58 / 25.4, '1⅛'],
  ])('writes %d in as %s', (inches, expected) => {
    expect(inchFraction(inches)).toBe(expected);
  });

  test.each([1.3, -1, Number.NaN])('leaves %d as it is', (inches) => {
    expect(inchFraction(inches)).toBeUndefined();
  });

  test.each([
    ['1 1/8-8 UN', '1⅛-8 UN'],
    ['1-1/8-8 UN', '1⅛-8 UN'],
    ['3/4-10 UNC', '¾-10 UNC'],
    ['13/16-16 UN', '13/16-16 UN'],
    ['M20x1.5', 'M20x1.5'],
  ])('writes the thread %s as %s', (thread, expected) => {
    expect(threadName(thread)).toBe(expected);
  });
});

describe('dates', () => {
  const format = make();

  test('shows the time of the site, not of the device', () => {
    expect(format.time('2027-07-09T04:52:00Z')).toBe('05:52');
    expect(make({ timeZone: 'Asia/Kolkata' }).time('2027-07-09T04:52:00Z')).toBe('10:22');
    expect(format.dayTime('2027-03-09T05:52:00Z')).toBe('Tue 9 Mar 05:52');
  });

  test('writes midnight as 00:00', () => {
    expect(format.time('2027-03-09T00:00:00Z')).toBe('00:00');
  });

  test('puts the small hours into the shift that began the evening before', () => {
    expect(format.shift('2027-03-10T04:40:00Z')).toBe('Night, Tue 9 Mar');
    expect(format.shift('2027-03-10T06:00:00Z')).toBe('Day, Wed 10 Mar');
  });

  test('keeps a calendar day where it is in every zone', () => {
    for (const timeZone of ['Pacific/Kiritimati', 'Pacific/Pago_Pago', 'UTC']) {
      expect(make({ timeZone }).calendarDay('2027-03-09')).toBe('Tue 9 Mar');
      expect(make({ timeZone }).datedDay('2028-03-09')).toBe('9 Mar 2028');
    }
  });

  test.each([
    [14, '14 min'],
    [60, '1 h'],
    [200, '3 h 20 min'],
    [3120, '2 d 4 h'],
  ])('writes %d minutes as %s', (minutes, expected) => {
    expect(plain(format.duration(minutes))).toBe(expected);
  });

  test('refuses what is no date', () => {
    expect(() => format.day('yesterday')).toThrow(/yesterday/);
  });
});
