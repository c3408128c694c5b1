import { type ShutdownEventType, shutdownPayloads } from '@seatwell/contract';

/** The parts of a schema that are looked through here. */
interface Schema {
  readonly def?: { readonly type: string; readonly innerType?: Schema; readonly element?: Schema };
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly options?: readonly unknown[];
}

const WRAPPING = new Set(['nullable', 'optional', 'default', 'readonly', 'prefault', 'nonoptional']);

function within(schema: Schema | undefined, part: string | number): Schema | undefined {
  const inner = unwrapped(schema);
  return typeof part === 'number' ? inner?.def?.element : inner?.shape?.[part];
}

function unwrapped(schema: Schema | undefined): Schema | undefined {
  let inner = schema;
  while (inner?.def && WRAPPING.has(inner.def.type)) inner = inner.def.innerType;
  return inner;
}

/**
 * The codes that the contract allows at a place of an event's payload.
 * @returns undefined where anything may be written
 */
export function choicesOf(type: string, path: readonly (string | number)[]): readonly string[] | undefined {
  if (!Object.hasOwn(shutdownPayloads, type)) return undefined;
  const root = shutdownPayloads[type as ShutdownEventType] as unknown as Schema;
  const schema = unwrapped(path.reduce<Schema | undefined>(within, root));
  if (schema?.def?.type !== 'enum') return undefined;
  return schema.options?.filter((option): option is string => typeof option === 'string');
}
