import type { PersonRow } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { peopleFound, qualifiedToday, worstState } from './qualification-state.ts';

describe('how a person stands', () => {
  test('one that lapses is named before one that is in date', () => {
    expect(worstState([{ state: 'in-date' }, { state: 'lapsing' }])).toBe('lapsing');
  });

  test('a withdrawn certificate says nothing about the others', () => {
    expect(worstState([{ state: 'withdrawn' }, { state: 'in-date' }])).toBe('in-date');
    expect(worstState([])).toBe('none');
  });

  test('lapsed and withdrawn certificates do not qualify today, lapsing ones still do', () => {
    const qualifications = [
      { state: 'lapsed', qualifiedFor: ['tensioner'] },
      { state: 'lapsing', qualifiedFor: ['torque-wrench', 'assembly'] },
      { state: 'in-date', qualifiedFor: ['assembly'] },
    ] as PersonRow['qualifications'];
    expect(qualifiedToday({ qualifications })).toEqual(['torque-wrench', 'assembly']);
  });
});

describe('finding people', () => {
  const person = (name: string, company: string, crew: string) =>
    ({ name, company, badge: null, trade: 'pipe fitter', crews: [{ code: crew }] }) as PersonRow;
  const rows = [person('Ana Ruiz', 'Norvik', 'D1'), person('Tom Berg', 'Norvik', 'N2')];

  test('by words of name, company and crew, in any order and case', () => {
    expect(peopleFound(rows, 'norvik n2')).toEqual([rows[1]]);
    expect(peopleFound(rows, 'RUIZ')).toEqual([rows[0]]);
    expect(peopleFound(rows, '')).toHaveLength(2);
  });
});
