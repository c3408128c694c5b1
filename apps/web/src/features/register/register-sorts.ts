/** The orders that the API offers; REGISTER_SORTS of the contract would bring its schemas into the first load. */
export const REGISTER_SORTS_KNOWN = [
  'tag',
  'size',
  'planned',
  'stage',
  'area',
  'system',
  'crew',
  'criticality',
] as const;
export type RegisterSort = (typeof REGISTER_SORTS_KNOWN)[number];
