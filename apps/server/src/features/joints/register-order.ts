import { CRITICALITIES, day, id, type RegisterQuery } from '@seatwell/contract';
import { Problem } from '../../platform/errors/problem.ts';
import type { Places } from '../reading/places.ts';
import type { Values } from './register-filters.ts';

/**
 * A stretch of the order in which one index gives the rows. An order by area, for example, is one stretch for each
 * area, in the order of their codes, and one for what has no area.
 */
export interface Stretch {
  readonly id: string;
  readonly condition: ((values: Values) => string) | null;
  /** column that leads the order within the stretch, before tag and id */
  readonly lead: { readonly column: string; readonly type: string } | null;
}

const whole = (column: string, type: string): Stretch[] => [{ id: 'all', condition: null, lead: { column, type } }];

const without = (column: string): Stretch => ({ id: 'none', condition: () => `j.${column} IS NULL`, lead: null });

const each = (column: string, type: string, keys: readonly string[]): Stretch[] =>
  keys.map((key) => ({ id: key, condition: (values) => `j.${column} = ${values.add(key)}::${type}`, lead: null }));

const only = (keys: Iterable<string>, wanted: readonly string[] | undefined): string[] =>
  [...keys].filter((key) => !wanted?.length || wanted.includes(key));

function ascending({ sort, area, system, crew }: RegisterQuery, places: Places): Stretch[] {
  switch (sort) {
    case 'tag':
      return [{ id: 'all', condition: null, lead: null }];
    case 'size':
      return whole('size_rank', 'float8');
    case 'stage':
      return whole('stage_rank', 'int2');
    case 'planned':
      return [
        { id: 'set', condition: () => 'j.planned_on IS NOT NULL', lead: { column: 'planned_on', type: 'date' } },
        without('planned_on'),
      ];
    case 'area':
      return [...each('area_id', 'uuid', only(places.areas.keys(), area)), without('area_id')];
    case 'system':
      return [...each('system_id', 'uuid', only(places.systems.keys(), system)), without('system_id')];
    case 'crew':
      return [...each('crew_id', 'uuid', only(places.crews.keys(), crew)), without('crew_id')];
    case 'criticality':
      return each('criticality', 'text', CRITICALITIES);
  }
}

/** The stretches of an order; turned round, what has no value still comes last. */
export function stretchesOf(query: RegisterQuery, places: Places): Stretch[] {
  const stretches = ascending(query, places);
  if (!query.descending) return stretches;
  return [
    ...stretches.filter((stretch) => stretch.id !== 'none').reverse(),
    ...stretches.filter((stretch) => stretch.id === 'none'),
  ];
}

/** Where a page ended: the stretch and the keys of its last row. */
export interface Position {
  readonly stretch: string;
  readonly lead: string | number | null;
  /** sort key of the tag, hex */
  readonly tagKey: string;
  readonly jointId: string;
}

const orderName = ({ sort, descending }: RegisterQuery): string => (descending ? `-${sort}` : sort);

export const cursorOf = (query: RegisterQuery, at: Position): string =>
  Buffer.from(JSON.stringify([orderName(query), at.stretch, at.lead, at.tagKey, at.jointId])).toString('base64url');

const refused = (why: string): Problem =>
  new Problem('bad-input', `The cursor ${why}. Begin again without one.`, [
    { path: 'query.cursor', code: 'cursor', message: `This cursor ${why}.` },
  ]);

const isUuid = (text: string): boolean => id.safeParse(text).success;

/** A rank, a day, or nothing where tags alone make the order. */
const isLead = (value: unknown): value is Position['lead'] =>
  value === null || typeof value === 'number' || day.safeParse(value).success;

/** @throws Problem `bad-input` for a cursor that was not made for this order */
export function positionOf(query: RegisterQuery): Position | null {
  if (!query.cursor) return null;
  let parts: unknown;
  try {
    parts = JSON.parse(Buffer.from(query.cursor, 'base64url').toString('utf8'));
  } catch {
    throw refused('cannot be read');
  }
  if (!Array.isArray(parts) || parts.length !== 5) throw refused('cannot be read');
  const [name, stretch, lead, tagKey, jointId] = parts as unknown[];
  if (name !== orderName(query)) throw refused('belongs to another order');
  if (typeof stretch !== 'string' || typeof tagKey !== 'string' || typeof jointId !== 'string')
    throw refused('cannot be read');
  if (!/^([0-9a-f]{2})*$/.test(tagKey)) throw refused('cannot be read');
  if (!isUuid(jointId) || !isLead(lead)) throw refused('cannot be read');
  return { stretch, lead, tagKey, jointId };
}

/**
 * The stretches that are left, beginning with that of the position.
 * @throws Problem `bad-input` when the position is in none of them: the cursor was made for other filters
 */
export function stretchesFrom(stretches: readonly Stretch[], position: Position | null): readonly Stretch[] {
  if (!position) return stretches;
  const from = stretches.findIndex((stretch) => stretch.id === position.stretch);
  const fits = from >= 0 && (stretches[from]?.lead === null) === (position.lead === null);
  if (!fits) throw refused('belongs to other filters');
  return stretches.slice(from);
}

/** The condition that continues a stretch after a position, and its ORDER BY. */
export function keyset(
  stretch: Stretch,
  descending: boolean,
  after: Position | null,
  values: Values,
): { condition: string | null; order: (table: string) => string } {
  const { lead } = stretch;
  const columns = [...(lead ? [lead.column] : []), 'tag_key', 'joint_id'];
  const order = (table: string) =>
    columns.map((column) => `${table}.${column} ${descending ? 'DESC' : 'ASC'}`).join(', ');
  if (!after) return { condition: null, order };
  const keys = [
    ...(lead ? [`${values.add(after.lead)}::${lead.type}`] : []),
    `decode(${values.add(after.tagKey)}, 'hex')`,
    `${values.add(after.jointId)}::uuid`,
  ];
  const condition = `(${columns.map((column) => `j.${column}`).join(', ')}) ${descending ? '<' : '>'} (${keys.join(', ')})`;
  return { condition, order };
}
