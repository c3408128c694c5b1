import { describe, expect, test } from 'vitest';
import { finishAtPace, standing } from './pace.ts';

const days = (first: number, counts: readonly number[]) =>
  counts.map((count, index) => ({ day: `2027-03-${String(first + index).padStart(2, '0')}`, count }));

const plan = days(1, [10, 20, 30, 40, 50, 60, 70]);

describe('where the shutdown stands against its plan', () => {
  test('behind: 33 tight at the end of the fourth day, 40 were planned', () => {
    const curve = { plan, actual: days(1, [8, 16, 25, 33]), unplanned: 0 };
    expect(standing(curve)).toEqual({ actual: 33, planned: 40, ahead: -7 });
  });

  test('before the first day nothing is said', () => {
    expect(standing({ plan, actual: [], unplanned: 0 })).toBeUndefined();
  });

  test('a day without plan of its own keeps the plan of the day before', () => {
    const gaps = plan.filter((point) => point.day !== '2027-03-04');
    expect(standing({ plan: gaps, actual: days(1, [8, 16, 25, 33]), unplanned: 0 })?.planned).toBe(30);
  });
});

describe('the finish at the pace of the last three whole days', () => {
  const curve = { plan, actual: days(1, [8, 16, 25, 32, 34]), unplanned: 0 };

  test('8 joints a day, 36 left: five days after today', () => {
    expect(finishAtPace(curve, 70, '2027-03-05')).toEqual({ perDay: 8, days: 3, left: 36, on: '2027-03-10' });
  });

  test('the running day does not count into the pace', () => {
    const busy = { ...curve, actual: days(1, [8, 16, 25, 32, 60]) };
    expect(finishAtPace(busy, 70, '2027-03-05')?.perDay).toBe(8);
  });

  test('too few days, a standstill and a finished register give no forecast', () => {
    expect(finishAtPace({ ...curve, actual: days(1, [8, 16, 25]) }, 70, '2027-03-04')).toBeUndefined();
    expect(finishAtPace({ ...curve, actual: days(1, [8, 8, 8, 8]) }, 70, '2027-03-05')).toBeUndefined();
    expect(finishAtPace(curve, 34, '2027-03-05')).toBeUndefined();
  });

  test('the day is counted over the end of a month', () => {
    const late = { ...curve, actual: days(26, [10, 20, 30, 40, 50]) };
    expect(finishAtPace(late, 70, '2027-03-30')?.on).toBe('2027-04-01');
  });
});
