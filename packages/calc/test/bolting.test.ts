import { describe, expect, it } from 'vitest';
import { boltingGrade, CalcRefusal, findNut, nutOf, nutPairing } from '../src/index.ts';

describe('bolting grades step down with diameter', () => {
  it.each([
    ['B7', 50, 720],
    ['B7', 64, 720],
    ['B7', 64.1, 655],
    ['B7', 100, 655],
    ['B7', 150, 515],
    ['B7M', 30, 550],
    ['B16', 30, 725],
    ['B8 Class 1', 30, 205],
    ['B8 Class 2', 20, 690],
    ['B8 Class 2', 24, 550],
    ['B8M Class 2', 30, 450],
    ['L7', 30, 725],
    ['8.8', 16, 640],
    ['8.8', 20, 660],
    ['10.9', 20, 940],
  ])('%s at %d mm yields at %d MPa', (grade, diameter_mm, yield_MPa) => {
    expect(boltingGrade({ grade, diameter_mm }).yield_MPa).toBe(yield_MPa);
  });

  it('counts an inch thread by the inch steps: 4 in is still the middle step of B7', () => {
    expect(boltingGrade({ grade: 'B7', thread: '4-8 UN' }).yield_MPa).toBe(655);
    expect(boltingGrade({ grade: 'B7', diameter_mm: 101.6 }).yield_MPa).toBe(655);
    expect(boltingGrade({ grade: 'B7', thread: '2 1/2-8 UN' }).yield_MPa).toBe(720);
  });

  it.each(['ASTM A193 B7', 'A193-B7', 'A193 Gr. B7', 'SA-193 B7', 'b7'])('reads %s', (grade) => {
    expect(boltingGrade({ grade, diameter_mm: 20 }).grade).toBe('B7');
  });

  it('marks low strength and hardness limits', () => {
    expect(boltingGrade({ grade: 'B8 Cl.1', diameter_mm: 20 })).toMatchObject({ lowStrength: true, yield_MPa: 205 });
    expect(boltingGrade({ grade: 'B7M', diameter_mm: 20 }).maximumHardness_HBW).toBe(235);
    expect(boltingGrade({ grade: 'L7M', diameter_mm: 20 }).maximumHardness_HBW).toBe(235);
    expect(boltingGrade({ grade: 'B7', diameter_mm: 20 }).lowStrength).toBe(false);
  });

  it.each([
    [{ grade: 'B99', diameter_mm: 20 }, 'bolting-strength-missing'],
    [{ grade: 'A4-80', diameter_mm: 20 }, 'bolting-strength-missing'],
    [{ grade: 'B8', diameter_mm: 20 }, 'grade-class-must-be-given'],
    [{ grade: '8.8', diameter_mm: 45 }, 'diameter-out-of-table'],
    [{ grade: 'B8 Class 2', diameter_mm: 42 }, 'diameter-out-of-table'],
    [{ grade: 'B7' }, 'diameter-must-be-given'],
    [{ grade: 'B7', diameter_mm: -3 }, 'out-of-range'],
  ])('refuses %j: %s', (input, code) => {
    expect(() => boltingGrade(input)).toThrow(expect.objectContaining({ code }) as CalcRefusal);
  });
});

describe('nuts', () => {
  it('pairs 2H with B7 and not with B7M', () => {
    expect(nutPairing({ grade: 'B7', nut: '2H' }).accepted).toBe(true);
    expect(nutPairing({ grade: 'B7M', nut: '2H' }).accepted).toBe(false);
    expect(nutPairing({ grade: 'B7M', nut: 'A194 2HM' }).accepted).toBe(true);
    expect(nutPairing({ grade: 'B8M Class 2', nut: '8M' }).accepted).toBe(true);
  });

  it('know their socket', () => {
    expect(nutOf({ thread: '3/4-10 UNC' }).acrossFlats_mm).toBeCloseTo(31.75, 1);
    expect(nutOf({ thread: '1 1/2-8 UN' }).acrossFlats_mm).toBeCloseTo(60.3, 1);
    expect(nutOf({ thread: 'M20' })).toMatchObject({ acrossFlats_mm: 30, height_mm: 18, series: 'hex' });
    expect(nutOf({ thread: 'M20', series: 'heavy-hex' }).acrossFlats_mm).toBe(34);
  });

  it('have no invented size', () => {
    expect(findNut({ thread: '4 1/2-8 UN' })).toBeUndefined();
    expect(() => nutOf({ thread: 'M33', series: 'heavy-hex' })).toThrow(CalcRefusal);
  });
});
