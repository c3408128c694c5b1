/** Where somebody left a long table. */
export interface KeptPlace {
  /** px scrolled */
  readonly offset: number;
  readonly row: number;
}

// One visit of a page each; a table of a long day leaves some hundred small entries.
const places = new Map<string, KeptPlace>();

/** Keeps the place of a table for whoever comes back to the same visit of its page. */
export function keepPlace(visit: string | undefined, place: KeptPlace): void {
  if (visit !== undefined) places.set(visit, place);
}

/** The place at which somebody left the table in an earlier part of the same visit. */
export function keptPlace(visit: string | undefined): KeptPlace | undefined {
  return visit === undefined ? undefined : places.get(visit);
}
