import { REGISTER_SORTS, type RegisterSort } from '@seatwell/contract';
import { listOf, textOf } from '../../app/search-params.ts';

const lists = [
  'area',
  'system',
  'crew',
  'stage',
  'flag',
  'waitsFor',
  'criticality',
  'gasketFamily',
  'size',
  'rating',
  'kind',
] as const;
const texts = [
  'pack',
  'stageFrom',
  'stageTo',
  'by',
  'plannedFrom',
  'plannedUpTo',
  'search',
  'found',
  'withoutTarget',
  'voided',
] as const;

type ListName = (typeof lists)[number];
type TextName = (typeof texts)[number];

/** What the address of the register says: filters and order. The names are the API's. */
export type RegisterSearch = { readonly [Name in ListName]?: readonly string[] } & {
  readonly [Name in TextName]?: string;
} & { readonly sort?: RegisterSort; readonly descending?: 'true' };

/** Reads the address; what the register does not know is left out. */
export function readRegisterSearch(search: Record<string, unknown>): RegisterSearch {
  const read: Record<string, string | readonly string[]> = {};
  for (const name of lists) {
    const values = listOf(search[name]);
    if (values.length > 0) read[name] = values;
  }
  for (const name of texts) {
    const value = textOf(search[name]);
    if (value !== undefined) read[name] = value;
  }
  const sort = REGISTER_SORTS.find((each) => each === search.sort);
  if (sort !== undefined) read.sort = sort;
  if (search.descending === 'true') read.descending = 'true';
  return read as RegisterSearch;
}

/** The filters alone, as the API takes them beside a selection. */
export function filtersOf({ sort: _sort, descending: _descending, ...filters }: RegisterSearch): RegisterSearch {
  return filters;
}

/** Whether anything narrows the register down. */
export function isFiltered(search: RegisterSearch): boolean {
  return Object.keys(filtersOf(search)).length > 0;
}

/** The same list in the order of a column; the same column again turns it round. */
export function sortedBy(search: RegisterSearch, sort: RegisterSort): RegisterSearch {
  const { descending, ...rest } = search;
  const again = (search.sort ?? 'tag') === sort && descending !== 'true';
  return { ...rest, sort, ...(again ? { descending: 'true' as const } : {}) };
}

/** The same list with one filter set anew, or without it. */
export function withFilter(
  search: RegisterSearch,
  name: ListName | TextName,
  value: readonly string[] | string | undefined,
): RegisterSearch {
  const { [name]: _old, ...rest } = search;
  return value === undefined || value.length === 0 ? rest : { ...rest, [name]: value };
}
