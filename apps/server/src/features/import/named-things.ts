import type { ImportChoices, ImportPreview, NamedThing, Payload } from '@seatwell/contract';
import type { Quantity, RegisterValues } from '@seatwell/workflow';
import { uuidv7 } from 'uuidv7';
import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

export const NAMED_KINDS = ['areas', 'systems', 'crews', 'packs'] as const;
export type NamedKind = (typeof NAMED_KINDS)[number];

/** What confirming creates before the joints, each by its own event. */
export interface Creations {
  readonly areas: readonly Payload<'area-listed'>[];
  readonly systems: readonly Payload<'system-listed'>[];
  readonly crews: readonly Payload<'crew-listed'>[];
  readonly packs: readonly Payload<'pack-planned'>[];
}

interface Entry {
  readonly name: string;
  /** name with the system that a subsystem belongs to */
  readonly longName: string;
  readonly id: string;
  readonly exists: boolean;
  areaId: string | null;
  systemId: string | null;
  rows: number;
  /** rows that will be imported: what only rows in error name is not created */
  used: number;
  /** test pressures that the file says; a pack has one, so more than one has to be settled */
  readonly pressures: Map<number, Quantity>;
}

interface Existing {
  readonly id: string;
  readonly name: string;
  /** other names that mean it */
  readonly also: string | null;
}

const comparable = (name: string): string => name.trim().replace(/\s+/g, ' ').toUpperCase();

const QUERIES: Readonly<Record<NamedKind, string>> = {
  areas: 'SELECT area_id AS id, code AS name, name AS also FROM area',
  systems: 'SELECT system_id AS id, code AS name, name AS also FROM system',
  crews: 'SELECT crew_id AS id, code AS name, NULL AS also FROM crew',
  packs: 'SELECT pack_id AS id, number AS name, NULL AS also FROM test_pack',
};

/** Ids of a row's area, system, crew and packs. */
export interface Placed {
  readonly areaId: string | null;
  readonly systemId: string | null;
  readonly crewId: string | null;
  readonly packIds: readonly string[];
}

/** The areas, systems, crews and packs of a shutdown, as a file names them: known, meant, or to be created. */
export class NamedThings {
  readonly #existing: Readonly<Record<NamedKind, readonly Existing[]>>;
  readonly #names: Readonly<Record<NamedKind, ReadonlyMap<string, string>>>;
  readonly #shownNames: ReadonlyMap<string, string>;
  readonly #entries: Readonly<Record<NamedKind, Map<string, Entry>>> = {
    areas: new Map(),
    systems: new Map(),
    crews: new Map(),
    packs: new Map(),
  };
  readonly #choices: ImportChoices;

  private constructor(existing: Readonly<Record<NamedKind, readonly Existing[]>>, choices: ImportChoices) {
    this.#existing = existing;
    this.#choices = choices;
    const namesOf = (kind: NamedKind) =>
      new Map([
        ...existing[kind].flatMap(({ id, also }) => (also === null ? [] : [[comparable(also), id] as const])),
        ...existing[kind].map(({ id, name }) => [comparable(name), id] as const),
      ]);
    this.#names = {
      areas: namesOf('areas'),
      systems: namesOf('systems'),
      crews: namesOf('crews'),
      packs: namesOf('packs'),
    };
    this.#shownNames = new Map(
      NAMED_KINDS.flatMap((kind) => existing[kind].map(({ id, name }) => [id, name] as const)),
    );
  }

  static async load(tx: Transaction, siteId: string, shutdownId: string, choices: ImportChoices): Promise<NamedThings> {
    const existing: Record<NamedKind, readonly Existing[]> = { areas: [], systems: [], crews: [], packs: [] };
    for (const kind of NAMED_KINDS) {
      const { rows } = await tx.query<Existing>(`${QUERIES[kind]} WHERE site_id = $1 AND shutdown_id = $2 ORDER BY 2`, [
        siteId,
        shutdownId,
      ]);
      existing[kind] = rows;
    }
    const things = new NamedThings(existing, choices);
    things.#refuseUnknownChoices();
    return things;
  }

  #refuseUnknownChoices(): void {
    for (const kind of NAMED_KINDS) {
      const known = new Set(this.#existing[kind].map(({ id }) => id));
      for (const [name, id] of Object.entries(this.#choices.meant[kind])) {
        if (id !== null && !known.has(id))
          throw new Problem('not-found', `“${name}” was to mean ${id}, which is none of the ${kind} of this shutdown.`);
      }
    }
  }

  #entry(kind: NamedKind, name: string, more: Partial<Pick<Entry, 'longName' | 'areaId' | 'systemId'>> = {}): Entry {
    const key = comparable(name);
    const known = this.#entries[kind].get(key);
    if (known) return known;
    const meant = this.#choices.meant[kind];
    const id = Object.hasOwn(meant, name) ? (meant[name] ?? null) : (this.#names[kind].get(key) ?? null);
    const entry: Entry = {
      name,
      longName: more.longName ?? name,
      id: id ?? uuidv7(),
      exists: id !== null,
      areaId: more.areaId ?? null,
      systemId: more.systemId ?? null,
      rows: 0,
      used: 0,
      pressures: new Map(),
    };
    this.#entries[kind].set(key, entry);
    return entry;
  }

  #entriesOf(values: RegisterValues): Readonly<Record<NamedKind, readonly Entry[]>> {
    const area = values.area === undefined ? null : this.#entry('areas', values.area);
    // Systems are handed over by their finest part: where the sheet names a subsystem, that is the system here.
    const code = values.subsystem ?? values.system;
    const longName = values.subsystem && values.system ? `${values.system} · ${values.subsystem}` : code;
    const system =
      code === undefined
        ? null
        : this.#entry('systems', code, { longName: (longName ?? code).slice(0, 200), areaId: area?.id ?? null });
    const crew = values.crew === undefined ? null : this.#entry('crews', values.crew);
    const packs = (values.testPack ?? []).map((number) =>
      this.#entry('packs', number, { areaId: area?.id ?? null, systemId: system?.id ?? null }),
    );
    return {
      areas: area ? [area] : [],
      systems: system ? [system] : [],
      crews: crew ? [crew] : [],
      packs,
    };
  }

  /** Counts what a row names and answers the ids. */
  place(values: RegisterValues): Placed {
    const entries = this.#entriesOf(values);
    for (const kind of NAMED_KINDS) for (const entry of entries[kind]) entry.rows += 1;
    for (const pack of entries.packs) {
      const { testPressure } = values;
      if (testPressure && testPressure.si > 0) pack.pressures.set(testPressure.si, testPressure);
    }
    return {
      areaId: entries.areas[0]?.id ?? null,
      systemId: entries.systems[0]?.id ?? null,
      crewId: entries.crews[0]?.id ?? null,
      packIds: [...new Set(entries.packs.map((pack) => pack.id))],
    };
  }

  /** Notes that a row that will be imported needs what it names. */
  use(values: RegisterValues, kinds: readonly NamedKind[] = NAMED_KINDS): void {
    const entries = this.#entriesOf(values);
    for (const entry of [...entries.systems, ...entries.packs]) {
      if (entry.used > 0) continue;
      // The first row that counts says where it belongs: what only rows in error name is not created.
      entry.areaId = entries.areas[0]?.id ?? null;
      entry.systemId = entries.systems[0]?.id ?? null;
    }
    for (const kind of kinds) for (const entry of entries[kind]) entry.used += 1;
  }

  /** The name of an id, for differences that people read. */
  nameOf(id: string | null): string | null {
    if (id === null) return null;
    const known = this.#shownNames.get(id);
    if (known !== undefined) return known;
    for (const kind of NAMED_KINDS)
      for (const entry of this.#entries[kind].values()) if (entry.id === id) return entry.name;
    return null;
  }

  #missing(kind: NamedKind, entry: Entry): NamedThing['missing'] {
    if (entry.exists || entry.used === 0) return null;
    if (kind === 'crews' && this.#choices.newCrewCompany === null) return 'company';
    if (kind === 'packs' && this.#pressure(entry) === null) return 'pressure';
    return null;
  }

  #pressure(entry: Entry): Pick<Payload<'pack-planned'>, 'pressure_MPa' | 'pressureAsEntered'> | null {
    const [only, ...others] = [...entry.pressures.values()];
    if (only && others.length === 0) return { pressure_MPa: only.si, pressureAsEntered: only.entered };
    const { pressure_MPa } = this.#choices.newPacks;
    return pressure_MPa === null ? null : { pressure_MPa, pressureAsEntered: null };
  }

  named(): ImportPreview['named'] {
    const of = (kind: NamedKind): NamedThing[] =>
      [...this.#entries[kind].values()].map((entry) => ({
        name: entry.name,
        rows: entry.rows,
        id: entry.exists ? entry.id : null,
        missing: this.#missing(kind, entry),
      }));
    return { areas: of('areas'), systems: of('systems'), crews: of('crews'), packs: of('packs') };
  }

  existing(): ImportPreview['existing'] {
    const of = (kind: NamedKind) => this.#existing[kind].map(({ id, name }) => ({ id, name }));
    return { areas: of('areas'), systems: of('systems'), crews: of('crews'), packs: of('packs') };
  }

  creations(): Creations {
    const fresh = (kind: NamedKind) =>
      [...this.#entries[kind].values()].filter((entry) => !entry.exists && entry.used > 0);
    const { newPacks, newCrewCompany } = this.#choices;
    return {
      areas: fresh('areas').map(({ id, name }) => ({ areaId: id, code: name, name })),
      systems: fresh('systems').map(({ id, name, longName, areaId }) => ({
        systemId: id,
        areaId,
        code: name,
        name: longName,
      })),
      crews: fresh('crews').map(({ id, name }) => ({
        crewId: id,
        code: name,
        company: newCrewCompany ?? '',
        shift: null,
        personIds: [],
      })),
      packs: fresh('packs').map((entry) => ({
        packId: entry.id,
        number: entry.name,
        systemId: entry.systemId,
        areaId: entry.areaId,
        way: newPacks.way,
        medium: newPacks.medium,
        // Without one the confirmation is refused before anything is created.
        ...(this.#pressure(entry) ?? { pressure_MPa: 0, pressureAsEntered: null }),
        hold_min: newPacks.hold_min,
        plannedOn: null,
      })),
    };
  }
}
