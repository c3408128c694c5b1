import { describe, expect, test } from 'vitest';
import { parseSearch, writeSearch } from '../../app/search-params.ts';
import { isFiltered, readRegisterSearch, sortedBy, withFilter } from './register-search.ts';

describe('the address of a register list', () => {
  test('keeps a list: written and read again it is the same', () => {
    const kept = readRegisterSearch({ stage: ['open', 'tight'], rating: '300', search: '41-E', sort: 'planned' });
    expect(readRegisterSearch(parseSearch(writeSearch(kept)))).toEqual(kept);
  });

  test('a rating stays a text, and one value is a list', () => {
    expect(readRegisterSearch(parseSearch('?rating=300&stage=open,tight'))).toEqual({
      rating: ['300'],
      stage: ['open', 'tight'],
    });
  });

  test('what the register does not know is left out', () => {
    expect(readRegisterSearch({ colour: 'red', sort: 'weight', descending: 'yes' })).toEqual({});
  });

  test('the same column again turns the order round, another begins upwards', () => {
    expect(sortedBy({}, 'tag')).toEqual({ sort: 'tag', descending: 'true' });
    expect(sortedBy({ sort: 'tag', descending: 'true' }, 'tag')).toEqual({ sort: 'tag' });
    expect(sortedBy({ sort: 'tag', descending: 'true' }, 'size')).toEqual({ sort: 'size' });
  });

  test('a filter that is emptied is gone', () => {
    expect(withFilter({ stage: ['open'] }, 'stage', [])).toEqual({});
    expect(isFiltered({ sort: 'size' })).toBe(false);
    expect(isFiltered({ found: 'true' })).toBe(true);
  });
});
