import { expect, test } from 'vitest';
import { lapsingByPerson, missingByPerson } from './people-by-person.ts';

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

test('a person who misses several methods is named once, with each of them', () => {
  const crew = { crewId: 'n2', code: 'N2' };
  const missing = (name: string, method: 'torque-wrench' | 'hydraulic-wrench', plannedJoints: number) => ({
    person: { personId: name, name },
    method,
    crew,
    plannedJoints,
  });
  const rows = missingByPerson([
    missing('Bea', 'torque-wrench', 23),
    missing('Aki', 'hydraulic-wrench', 5),
    missing('Bea', 'hydraulic-wrench', 8),
  ]);
  expect(rows.map((row) => [row.person.name, row.methods.map((each) => each.plannedJoints)])).toEqual([
    ['Bea', [23, 8]],
    ['Aki', [5]],
  ]);
});
