import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { finishAtPace, standing, T_90 } from '../../src/index.ts';

const days = (first: number, counts: readonly number[]) =>
  counts.map((count, index) => ({ day: `2027-03-${String(first + index).padStart(2, '0')}`, count }));

const plan = days(1, [10, 20, 30, 40, 50, 60, 70]);

describe('where the shutdown stands against its plan', () => {
  test('behind: 33 tight at the end of the fourth day, 40 were planned', () => {
    expect(standing({ plan, actual: days(1, [8, 16, 25, 33]) })).toEqual({ actual: 33, planned: 40, ahead: -7 });
  });

  test('before the first day nothing is said', () => {
    expect(standing({ plan, actual: [] })).toBeUndefined();
  });

  test('a day without plan of its own keeps the plan of the day before', () => {
    const gaps = plan.filter((point) => point.day !== '2027-03-04');
    expect(standing({ plan: gaps, actual: days(1, [8, 16, 25, 33]) })?.planned).toBe(30);
  });
});

describe('the finish at the pace of the last whole days', () => {
  const actual = days(1, [8, 16, 25, 32, 34]);

  // 8, 9 and 7 a day: mean 8, deviation 1, t 1.886. After 4 days 32 + 5.8 reach the 36 left, after 6 days 48 − 8.0.
  test('8 joints a day, 36 left: five days after today, from four to six', () => {
    expect(finishAtPace({ actual }, 70, '2027-03-05')).toEqual({
      perDay: 8,
      days: 3,
      left: 36,
      on: '2027-03-10',
      earliest: '2027-03-09',
      latest: '2027-03-11',
    });
  });

  test('the running day does not count into the pace', () => {
    expect(finishAtPace({ actual: days(1, [8, 16, 25, 32, 60]) }, 70, '2027-03-05')?.perDay).toBe(8);
  });

  test('days that are all alike leave no doubt', () => {
    const finish = finishAtPace({ actual: days(1, [10, 20, 30, 40]) }, 90, '2027-03-05');
    expect(finish).toMatchObject({ on: '2027-03-10', earliest: '2027-03-10', latest: '2027-03-10' });
  });

  test('days that vary wildly leave the last day open', () => {
    expect(finishAtPace({ actual: days(1, [0, 1, 40, 41]) }, 200, '2027-03-05')).toMatchObject({ latest: null });
  });

  test('a week at the most is looked at', () => {
    const long = days(1, [50, 100, 110, 120, 130, 140, 150, 160, 170]);
    expect(finishAtPace({ actual: long }, 200, '2027-03-10')).toMatchObject({ days: 7, perDay: 10 });
  });

  test('too few days, a standstill and a finished register give no forecast', () => {
    expect(finishAtPace({ actual: days(1, [8, 16, 25]) }, 70, '2027-03-04')).toBeUndefined();
    expect(finishAtPace({ actual: days(1, [8, 8, 8, 8]) }, 70, '2027-03-05')).toBeUndefined();
    expect(finishAtPace({ actual }, 34, '2027-03-05')).toBeUndefined();
    expect(finishAtPace({ actual: [] }, 34, '2027-03-05')).toBeUndefined();
  });

  test('the day is counted over the end of a month', () => {
    const late = days(26, [10, 20, 30, 40, 50]);
    expect(finishAtPace({ actual: late }, 70, '2027-03-30')?.on).toBe('2027-04-01');
  });

  test('the likely day lies between the earliest and the latest, whatever the days were', () => {
    const increments = fc.array(fc.nat({ max: 60 }), { minLength: 4, maxLength: 12 });
    fc.assert(
      fc.property(increments, fc.integer({ min: 1, max: 2000 }), (perDay, left) => {
        let count = 0;
        const curve = perDay.map((each, index) => {
          count += each;
          return { day: `2027-03-${String(1 + index).padStart(2, '0')}`, count };
        });
        const finish = finishAtPace({ actual: curve }, count + left, '2027-03-20');
        if (finish === undefined) return;
        expect(finish.earliest <= finish.on).toBe(true);
        expect(finish.latest === null || finish.on <= finish.latest).toBe(true);
      }),
    );
  });

  // Density of Student's t with ν degrees of freedom, ∝ (1 + x²/ν)^(−(ν+1)/2), summed numerically up to the quantile.
  test.each(Object.entries(T_90))('t with %s degrees of freedom leaves a tenth above %f', (freedom, quantile) => {
    const nu = Number(freedom);
    const density = (x: number) => (1 + x ** 2 / nu) ** (-(nu + 1) / 2);
    // x = tan a brings the whole half line into 0 … π/2.
    const area = (until: number) => {
      const steps = 20_000;
      let sum = 0;
      for (let step = 0; step < steps; step++) {
        const a = ((step + 0.5) / steps) * until;
        sum += density(Math.tan(a)) / Math.cos(a) ** 2;
      }
      return (sum * until) / steps;
    };
    expect(0.5 - area(Math.atan(quantile)) / area(Math.PI / 2) / 2).toBeCloseTo(0.1, 4);
  });
});
