/** The query of an address: texts, and lists where a name is repeated. Nothing is guessed: `300` stays a text. */
export type SearchValues = Readonly<Record<string, string | readonly string[] | undefined>>;

export function parseSearch(query: string): Record<string, string | string[]> {
  const found: Record<string, string | string[]> = {};
  for (const [name, value] of new URLSearchParams(query)) {
    const known = found[name];
    found[name] = known === undefined ? value : [...(Array.isArray(known) ? known : [known]), value];
  }
  return found;
}

export function writeSearch(values: SearchValues): string {
  const written = new URLSearchParams();
  for (const [name, value] of Object.entries(values)) {
    if (value === undefined || value === '') continue;
    if (typeof value === 'string') written.set(name, value);
    else for (const each of value) written.append(name, each);
  }
  const query = written.toString();
  return query === '' ? '' : `?${query}`;
}

/** One value of a name as a list; also `a,b` in one text, as figures write it. */
export function listOf(value: unknown): readonly string[] {
  const texts = Array.isArray(value) ? value : value === undefined || value === '' ? [] : [value];
  return texts.flatMap((each) => String(each).split(',')).filter((each) => each !== '');
}

export function textOf(value: unknown): string | undefined {
  const first = Array.isArray(value) ? value[0] : value;
  return first === undefined || first === null || first === '' ? undefined : String(first);
}
