import { expect, test } from 'vitest';
import { lapsingByPerson } from './lapsing.ts';

const lapse = (name: string, qualifiedFor: string, validThrough: string) => ({
  person: { personId: name, name },
  qualifiedFor,
  validThrough,
});

test('a certificate for several kinds of work lapses in one line, the earliest first', () => {
  const rows = lapsingByPerson([
    lapse('Ana', 'tensioner', '2027-03-12'),
    lapse('Tom', 'assembly', '2027-03-10'),
    lapse('Ana', 'testing', '2027-03-12'),
    lapse('Ana', 'assembly', '2027-03-11'),
  ]);
  expect(rows.map((row) => [row.person.name, row.validThrough, row.qualifiedFor.join()])).toEqual([
    ['Tom', '2027-03-10', 'assembly'],
    ['Ana', '2027-03-11', 'assembly'],
    ['Ana', '2027-03-12', 'tensioner,testing'],
  ]);
});
