import { CalcRefusal, findFlange, gasketDimensions } from '@seatwell/calc';
import type { ClampedPart, Criticality, GasketFamilyCode, JointKind, Payload } from '@seatwell/contract';
import type { Crew } from './people-and-tools.ts';
import { AREAS, FAMILIES, type Family, SYSTEMS } from './plant.ts';
import type { Recorder } from './recorder.ts';

export interface DemoMake {
  readonly makeId: string;
  readonly purpose: 'final' | 'spade-in';
  readonly gaskets: number;
  readonly gasketFamily: GasketFamilyCode;
}

export interface DemoJoint {
  readonly jointId: string;
  readonly tag: string;
  /** place in the register, from 1; the end of its tag */
  readonly number: number;
  readonly kind: JointKind;
  readonly criticality: Criticality;
  readonly system: (typeof SYSTEMS)[number];
  readonly crew: Crew;
  readonly family: Family;
  readonly makes: readonly DemoMake[];
  readonly bolts: number;
  readonly packIndex: number;
  readonly makersTorque_Nm: number | null;
  readonly blindId: string | null;
  /** not yet with the crews: the engineer or operations has it still */
  readonly late: 'unengineered' | 'no-target' | 'unreleased' | null;
  readonly payload: Payload<'joint-listed'>;
}

export interface Places {
  readonly areas: Readonly<Record<string, string>>;
  readonly systems: Readonly<Record<string, string>>;
  readonly packs: readonly { readonly packId: string; readonly number: string; readonly systemCode: string }[];
}

const ITEMS = ['E', 'P', 'V', 'FV', 'C', 'SP'] as const;
const PACKS_PER_SYSTEM: Readonly<Record<string, number>> = { '10-01': 2, '20-01': 2, '20-02': 2, '30-01': 2 };

/** The last four systems are half as large, and their crews begin with them. */
const SYSTEM_CYCLE = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 0, 3, 4, 1, 5, 6, 2, 7];
export const SMALL_SYSTEMS: readonly string[] = ['30-02', '30-03', '40-01', '40-02'];

/** Sixteen packs over the twelve systems. */
export function packsOf(story: Recorder): Places['packs'] {
  return SYSTEMS.flatMap(({ code }) =>
    Array.from({ length: PACKS_PER_SYSTEM[code] ?? 1 }, (_, index) => ({
      packId: story.id(),
      number: `TP-${code}-${String(index + 1).padStart(2, '0')}`,
      systemCode: code,
    })),
  );
}

function weighted(story: Recorder, families: readonly Family[]): Family {
  const total = families.reduce((sum, family) => sum + family.weight, 0);
  let at = story.random.next() * total;
  for (const family of families) {
    at -= family.weight;
    if (at <= 0) return family;
  }
  return story.random.pick(families);
}

/** Families that a system's service asks for: hydrogen and hot oil high, water and amine low. */
function familiesFor(systemCode: string): readonly Family[] {
  const low = ['30-02', '30-03', '40-01', '40-02', '20-04'].includes(systemCode);
  const high = ['20-01'].includes(systemCode);
  return FAMILIES.filter((family) => {
    if (low) return family.pressure_bar <= 20;
    return high ? family.pressure_bar >= 25 : family.pressure_bar >= 18 && family.pressure_bar <= 60;
  });
}

const part = (kind: ClampedPart['kind'], thickness_mm: number | null, note: string | null = null): ClampedPart => ({
  kind,
  thickness_mm,
  note,
});

interface Special {
  readonly kind: JointKind;
  readonly insert?: ClampedPart['kind'];
  readonly makersTorque_Nm?: number;
  readonly bolts?: { readonly count: number; readonly thread: string };
  readonly gasket?: GasketFamilyCode;
  readonly contact?: readonly [number, number];
  readonly size?: string;
}

/** Every nth joint is of another kind than a plain pair of flanges. */
function specialOf(index: number): Special | null {
  if (index % 41 === 7)
    return {
      kind: 'girth',
      bolts: { count: 32, thread: 'M27' },
      gasket: 'grooved-metal',
      contact: [760, 800],
      size: 'DN750',
    };
  if (index % 53 === 11)
    return {
      kind: 'manway',
      bolts: { count: 20, thread: 'M27' },
      gasket: 'graphite-sheet',
      contact: [610, 660],
      size: 'DN600',
    };
  if (index % 61 === 17)
    return {
      kind: 'ring-joint',
      makersTorque_Nm: 620,
      bolts: { count: 12, thread: 'M27' },
      gasket: 'ring-joint',
      size: 'NPS6',
    };
  if (index % 67 === 23)
    return {
      kind: 'lined',
      makersTorque_Nm: 95,
      bolts: { count: 8, thread: 'M16' },
      gasket: 'ptfe-sheet',
      size: 'DN100',
    };
  if (index % 71 === 29)
    return {
      kind: 'clamp-connector',
      makersTorque_Nm: 210,
      bolts: { count: 4, thread: 'M24' },
      gasket: 'none',
      size: 'DN100',
    };
  if (index % 73 === 31)
    return {
      kind: 'isolation-kit',
      makersTorque_Nm: 140,
      bolts: { count: 8, thread: 'M20' },
      gasket: 'isolation-kit',
      size: 'DN150',
    };
  if (index % 59 === 37)
    return {
      kind: 'compact-flange',
      makersTorque_Nm: 480,
      bolts: { count: 12, thread: 'M24' },
      gasket: 'ring-joint',
      size: 'DN150',
    };
  if (index % 29 === 13) return { kind: 'machine-nozzle' };
  if (index % 19 === 5) return { kind: 'insert', insert: index % 2 === 0 ? 'orifice-plate' : 'wafer-valve' };
  return null;
}

/** The limits of a machine nozzle go by its size, so its gasket is entered; grooved metal has no table. */
function contactOf(family: Family, kind: JointKind, gasket: GasketFamilyCode): readonly [number, number] | undefined {
  if (gasket === 'grooved-metal') return [289, 320];
  if (kind !== 'machine-nozzle') return undefined;
  const { standard, size, rating } = family;
  const { contactInside_mm, contactOutside_mm } = gasketDimensions({ standard, size, rating, family: gasket });
  return [contactInside_mm, contactOutside_mm];
}

function boltingOf(family: Family, special: Special | null) {
  if (special?.bolts) {
    return { count: special.bolts.count, thread: special.bolts.thread, grade: '8.8', nutGrade: '8', length_mm: null };
  }
  try {
    const flange = findFlange({ standard: family.standard, size: family.size, rating: family.rating });
    return {
      count: flange.boltCount,
      thread: flange.boltThread,
      grade: family.grade,
      nutGrade: family.grade === 'B7' ? '2H' : '8',
      length_mm: null,
    };
  } catch (error) {
    if (error instanceof CalcRefusal)
      throw new Error(`The demo's flange ${family.size} ${family.rating}: ${error.message}`);
    throw error;
  }
}

/** The register of the story: more than six hundred joints of every kind over systems, packs and crews. */
export function imagineJoints(story: Recorder, crews: readonly Crew[], places: Places, count: number): DemoJoint[] {
  return Array.from({ length: count }, (_, index) => imagineJoint(story, crews, places, index));
}

function imagineJoint(story: Recorder, crews: readonly Crew[], places: Places, index: number): DemoJoint {
  const { random } = story;
  const systemAt = SYSTEM_CYCLE[index % SYSTEM_CYCLE.length] ?? 0;
  const system = SYSTEMS[systemAt] ?? SYSTEMS[0];
  const family = weighted(story, familiesFor(system.code));
  const special = specialOf(index);
  const kind = special?.kind ?? 'flange-pair';
  const custom = special?.bolts !== undefined;
  const spaded = kind === 'flange-pair' && systemAt !== 8 && index % 23 === 3;
  const item = `${random.pick(ITEMS)}${system.code.replace('-', '')}${String(random.whole(1, 9))}`;
  const tag = `${system.code}-${item}-${String(index + 1).padStart(3, '0')}`;
  const gasketFamily = special?.gasket ?? family.gasket;
  // No table has grooved-metal gaskets: the maker's contact, invented here.
  const contact = special?.contact ?? contactOf(family, kind, gasketFamily);
  const gaskets = special?.insert ? 2 : gasketFamily === 'none' ? 0 : 1;
  const criticality: Criticality =
    kind === 'girth' || family.pressure_bar >= 60 ? (random.chance(0.3) ? 'A' : 'B') : random.chance(0.42) ? 'B' : 'C';
  const packs = places.packs.flatMap((pack, at) => (pack.systemCode === system.code ? [at] : []));
  const packIndex = random.pick(packs);
  const pack = places.packs[packIndex];
  if (!pack) throw new Error(`System ${system.code} has no test pack.`);
  const gasket = part('gasket', 4.5);
  const flange = part('flange', null);
  const stack = special?.insert ? [flange, gasket, part(special.insert, 12), gasket, flange] : [flange, gasket, flange];
  const crew = crews[systemAt % crews.length];
  if (!crew) throw new Error('The demo has no crews.');
  const makes: DemoMake[] = [];
  const common = { checkingLevel: null, proof: 'hydrotest' as const, plannedOn: null, crewId: crew.crewId };
  const plans: Payload<'joint-listed'>['makes'] = [];
  if (spaded) {
    const makeId = story.id();
    makes.push({ makeId, purpose: 'spade-in', gaskets: 2, gasketFamily });
    plans.push({
      ...common,
      makeId,
      number: 1,
      purpose: 'spade-in',
      workScope: 'break-and-remake',
      clampedParts: [flange, gasket, part('spade', 16), gasket, flange],
      gasket: {
        family: gasketFamily,
        detail: null,
        count: 2,
        contactInside_mm: contact?.[0] ?? null,
        contactOutside_mm: contact?.[1] ?? null,
        thickness_mm: null,
      },
      packs: [],
    });
  }
  const finalId = story.id();
  makes.push({ makeId: finalId, purpose: 'final', gaskets, gasketFamily });
  plans.push({
    ...common,
    makeId: finalId,
    number: plans.length + 1,
    purpose: 'final',
    workScope: 'break-and-remake',
    clampedParts: null,
    gasket: null,
    packs: [{ packId: pack.packId, role: index % 37 === 9 ? 'boundary' : 'inside' }],
  });
  const area = AREAS.find((each) => each.code === system.area);
  const bolting = boltingOf(family, special);
  return {
    jointId: story.id(),
    tag,
    number: index + 1,
    kind,
    criticality,
    system,
    crew,
    family,
    makes,
    bolts: bolting.count,
    packIndex,
    makersTorque_Nm: special?.makersTorque_Nm ?? null,
    blindId: spaded ? story.id() : null,
    late: SMALL_SYSTEMS.includes(system.code)
      ? null
      : index >= 625
        ? 'unengineered'
        : index >= 615
          ? 'no-target'
          : index >= 560
            ? 'unreleased'
            : null,
    payload: {
      placeId: story.id(),
      tag,
      kind,
      criticality,
      whereabouts: {
        areaId: places.areas[system.area] ?? null,
        systemId: places.systems[system.code] ?? null,
        line: `${family.size.replace(/\D/g, '')}"-${system.code}-${random.whole(100, 199)}`,
        location: `${area?.name ?? ''}, level ${random.whole(1, 4)}`,
        drawing: `ISO-${system.code}-${random.whole(10, 99)}`,
        item,
        viewedFrom: random.pick(['the pump side', 'the north', 'the gangway', 'below', 'the valve side']),
        bolt1At: 'the top',
      },
      specification: {
        flange: custom
          ? {
              standard: 'custom',
              size: special?.size ?? family.size,
              rating: '',
              facing: kind === 'ring-joint' ? 'ring-joint' : 'raised-face',
            }
          : { standard: family.standard, size: family.size, rating: family.rating, facing: 'raised-face' },
        bolting,
        gasket: {
          family: gasketFamily,
          detail: null,
          count: gaskets,
          contactInside_mm: contact?.[0] ?? null,
          contactOutside_mm: contact?.[1] ?? null,
          thickness_mm: null,
        },
        clampedParts: stack,
        service: {
          medium: system.medium,
          pressure_MPa: family.pressure_bar / 10,
          pressureAsEntered: { value: family.pressure_bar, unit: 'bar' },
          temperature_C: family.temperature_C,
          temperatureAsEntered: { value: family.temperature_C, unit: '°C' },
        },
        hotExposed: false,
      },
      makes: plans,
      remark: null,
    },
  };
}
