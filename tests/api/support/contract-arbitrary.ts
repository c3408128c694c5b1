import fc from 'fast-check';
import { uuidv7 } from 'uuidv7';
import { z } from 'zod';

interface JsonSchema {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | JsonSchema;
  readonly items?: JsonSchema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly format?: string;
  readonly pattern?: string;
  readonly minLength?: number;
}

const KNOWN_PATTERNS: Readonly<Record<string, string>> = {
  '^[0-9a-f]{64}$': 'a'.repeat(64),
  '^([01]\\d|2[0-3]):[0-5]\\d$': '06:00',
};

function text(schema: JsonSchema): fc.Arbitrary<unknown> {
  if (schema.format === 'uuid') return fc.constant(null).map(() => uuidv7());
  if (schema.format === 'date') return fc.constant('2027-03-09');
  if (schema.format === 'date-time') return fc.constant('2027-03-09T08:00:00Z');
  if (schema.format === 'email') return fc.constant(null).map(() => `${uuidv7()}@plant.example`);
  const known = schema.pattern ? KNOWN_PATTERNS[schema.pattern] : undefined;
  if (known) return fc.constant(known);
  return fc.string({ minLength: Math.max(1, schema.minLength ?? 1), maxLength: 12 }).map((word) => word.trim() || 'x');
}

function numeric(schema: JsonSchema): fc.Arbitrary<unknown> {
  const least = schema.minimum ?? (schema.exclusiveMinimum === undefined ? -5 : schema.exclusiveMinimum + 1);
  const most = Math.min(schema.maximum ?? least + 400, least + 400);
  return schema.type === 'integer'
    ? fc.integer({ min: Math.ceil(least), max: Math.floor(most) })
    : fc.double({ min: least, max: most, noNaN: true });
}

/** Values that the schema of the contract accepts, or nearly: what a refinement asks for beside it is left to chance. */
function fromJsonSchema(schema: JsonSchema): fc.Arbitrary<unknown> {
  const union = schema.anyOf ?? schema.oneOf;
  if (union) return fc.oneof(...union.map(fromJsonSchema));
  if ('const' in schema) return fc.constant(schema.const);
  if (schema.enum) return fc.constantFrom(...schema.enum);
  switch (schema.type) {
    case 'object': {
      const parts = Object.entries(schema.properties ?? {}).map(
        ([key, value]) => [key, fromJsonSchema(value)] as const,
      );
      return fc.record(Object.fromEntries(parts), { requiredKeys: [...(schema.required ?? [])] });
    }
    case 'array':
      return fc.array(fromJsonSchema(schema.items ?? {}), {
        minLength: schema.minItems ?? 0,
        maxLength: Math.min(schema.maxItems ?? 2, Math.max(2, schema.minItems ?? 0)),
      });
    case 'string':
      return text(schema);
    case 'number':
    case 'integer':
      return numeric(schema);
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return fc.constant({});
  }
}

/** Payloads as a schema of the contract describes them. */
export const payloadsOf = (schema: z.ZodType): fc.Arbitrary<unknown> =>
  fromJsonSchema(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as JsonSchema);

const deep = (depth: number): unknown => (depth === 0 ? 'bottom' : { down: deep(depth - 1) });

/** What a value may be replaced with by somebody who means no good, or by a program that is broken. */
export const HOSTILE: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    '',
    'x'.repeat(20_000),
    'a\u0000b',
    '\ud800',
    "'; DROP TABLE event; --",
    '{"__proto__":{"admin":true}}',
    -1,
    0,
    1e308,
    9_007_199_254_740_992,
    2_147_483_648,
    [],
    {},
    true,
    '00000000-0000-0000-0000-000000000000',
    '9999-12-31',
    '0000-01-01',
    '+275760-09-13T00:00:00.000Z',
    '0001-01-01T00:00:00Z',
    deep(400),
  ),
  fc.anything({ maxDepth: 2, withBigInt: false }).filter((value) => JSON.stringify(value) !== undefined),
);

/** The same value with one of its places (at random) holding something else. */
export function spoil(value: unknown, places: readonly number[], bad: unknown): unknown {
  const [place = 0, ...rest] = places;
  if (value === null || typeof value !== 'object' || places.length === 0) return bad;
  const keys = Object.keys(value);
  const key = keys[place % Math.max(1, keys.length)];
  if (key === undefined) return bad;
  const spoilt = spoil((value as Record<string, unknown>)[key], rest, bad);
  return Array.isArray(value) ? value.with(Number(key), spoilt) : { ...value, [key]: spoilt };
}
