/** Every field that a column of a register can hold, in the order in which screens offer them. */
export const REGISTER_FIELDS = [
  'tag',
  'area',
  'system',
  'subsystem',
  'line',
  'location',
  'drawing',
  'kind',
  'standard',
  'size',
  'rating',
  'facing',
  'boltCount',
  'boltThread',
  'boltLength',
  'boltGrade',
  'gasketFamily',
  'gasketDetail',
  'gasketCount',
  'insertThickness',
  'medium',
  'designPressure',
  'designTemperature',
  'testPack',
  'testPressure',
  'criticality',
  'workScope',
  'plannedDate',
  'crew',
  'item',
  'viewedFrom',
  'bolt1At',
  'remark',
] as const;

export type RegisterField = (typeof REGISTER_FIELDS)[number];

/** Which column (0-based) holds which field; columns that no field names are ignored. */
export type ColumnMapping = Readonly<Partial<Record<RegisterField, number>>>;

/** Letter of a column as sheets show it: 0 → `A`, 26 → `AA`. */
export function columnLetter(index: number): string {
  let letters = '';
  for (let rest = index; rest >= 0; rest = Math.floor(rest / 26) - 1) {
    letters = String.fromCharCode(65 + (rest % 26)) + letters;
  }
  return letters;
}
