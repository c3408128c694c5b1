/** One value of a recorded fact that can be corrected. */
export interface Correctable {
  readonly path: readonly (string | number)[];
  readonly label: string;
  readonly value: string | number | boolean;
  /** the same value in the unit of the API: it follows what the dial showed */
  readonly held?: { readonly path: readonly (string | number)[]; readonly factor: number };
}

// What binds a fact to other things is not typed anew: another tool or photo is another record.
const bound = /(Id|Ids|photo|Photo|hash)$/;

/** The values of a payload that a correction may change, with their names as words. */
export function correctable(payload: unknown, path: readonly (string | number)[] = []): readonly Correctable[] {
  if (Array.isArray(payload)) return payload.flatMap((each, index) => correctable(each, [...path, index]));
  if (typeof payload === 'object' && payload !== null && isSetting(payload)) return settingOf(payload, path);
  if (typeof payload === 'object' && payload !== null)
    return Object.entries(payload).flatMap(([name, value]) =>
      bound.test(name) ? [] : correctable(value, [...path, name]),
    );
  if (typeof payload === 'string' || typeof payload === 'number' || typeof payload === 'boolean')
    return [{ path, label: labelOf(path), value: payload }];
  return [];
}

interface Setting {
  readonly asEntered: { readonly value: number; readonly unit: string };
}

const isSetting = (payload: object): payload is Setting => 'asEntered' in payload && payload.asEntered !== null;

/** What a tool was set to is corrected once, as the dial showed it; all its units are proportional to the API's. */
function settingOf(setting: Setting, path: readonly (string | number)[]): readonly Correctable[] {
  const { asEntered } = setting;
  const held = Object.entries(setting).find(([, value]) => typeof value === 'number');
  if (!held || asEntered.value === 0) return [];
  const [name, value] = held as [string, number];
  return [
    {
      path: [...path, 'asEntered', 'value'],
      label: `${labelOf(path)}, ${asEntered.unit}`,
      value: asEntered.value,
      held: { path: [...path, name], factor: value / asEntered.value },
    },
  ];
}

/** `faces · 1 · flatness, mm`: the API's names are words of the trade with their unit. */
function labelOf(path: readonly (string | number)[]): string {
  return path
    .map((part) => {
      if (typeof part === 'number') return String(part + 1);
      const [name = '', unit] = part.split('_');
      const words = name.replaceAll(/([a-z])([A-Z0-9])/g, '$1 $2').toLowerCase();
      return unit === undefined ? words : `${words}, ${unit.replace('Nm', 'N·m')}`;
    })
    .join(' · ');
}

/** The value at a place of a payload. */
export function valueAt(payload: unknown, path: Correctable['path']): Correctable['value'] {
  return path.reduce<unknown>(
    (held, part) => (held as Record<string | number, unknown>)[part],
    payload,
  ) as Correctable['value'];
}

/** The payload with one value replaced; nothing else is touched. */
export function setAt(payload: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [head, ...rest] = path;
  if (head === undefined) return value;
  if (Array.isArray(payload)) return payload.map((each, index) => (index === head ? setAt(each, rest, value) : each));
  const held = payload as Record<string, unknown>;
  return { ...held, [head]: setAt(held[head], rest, value) };
}

/** The payload with one of its values corrected, in every unit in which it is held. */
export function corrected(payload: unknown, { path, held }: Correctable, value: string | number | boolean): unknown {
  const changed = setAt(payload, path, value);
  return held && typeof value === 'number' ? setAt(changed, held.path, value * held.factor) : changed;
}
