import { expect, test } from 'vitest';
import { daysLate } from './days-late.ts';

test('a pack is late from the day after its planned day, until it is proven', () => {
  expect(daysLate('2027-03-09', false, '2027-03-09')).toBe(0);
  expect(daysLate('2027-03-09', false, '2027-03-10')).toBe(1);
  expect(daysLate('2027-02-27', false, '2027-03-02')).toBe(3);
  expect(daysLate('2027-03-09', true, '2027-03-20')).toBe(0);
  expect(daysLate('2027-03-09', false, '2027-03-01')).toBe(0);
  expect(daysLate(null, false, '2027-03-20')).toBe(0);
});
