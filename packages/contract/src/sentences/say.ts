/** Sentences by the code of what they say, with `{{values}}`; where a code says several, `code/2` and so on. */
export type Sentences = Readonly<Record<string, string>>;

/** What the server or the calculation says: a stable code and its English sentence. */
export interface Said {
  readonly code: string;
  readonly message: string;
}

const PLACE = /\{\{(\w+)\}\}/g;

interface Pattern {
  readonly shape: RegExp;
  readonly names: readonly string[];
}
const patterns = new Map<string, Pattern>();

/** How an English sentence looks when its values are filled in. */
function patternOf(sentence: string): Pattern {
  const known = patterns.get(sentence);
  if (known) return known;
  const names = [...sentence.matchAll(PLACE)].map(([, name]) => name ?? '');
  const fixed = sentence.split(/\{\{\w+\}\}/).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const made = { shape: new RegExp(`^${fixed.join('(.*?)')}$`, 's'), names };
  patterns.set(sentence, made);
  return made;
}

/** The keys under which a code has its sentences: its own, and those of every code with its end (`*-missing`). */
const keysOf = (sentences: Sentences, code: string): string[] =>
  [code, `*-${code.split('-').at(-1)}`].flatMap((name) => {
    const keys = name in sentences ? [name] : [];
    for (let next = 2; `${name}/${next}` in sentences; next += 1) keys.push(`${name}/${next}`);
    return keys;
  });

/**
 * What was said in English, in another language: the sentence of its code there, with the values that the English one
 * names. The record keeps what was said, so this reads old entries as well as new ones.
 * @param english sentences of every code in English
 * @param own the same in the other language
 * @param shown how a value is written: numbers in the language, codes as words of the trade
 * @returns what was said as it is where its sentence is not known
 */
export function sayIn(
  english: Sentences,
  own: Sentences,
  { code, message }: Said,
  shown: (name: string, value: string) => string = (_name, value) => value,
): string {
  for (const key of keysOf(english, code)) {
    const { shape, names } = patternOf(english[key] ?? '');
    const found = shape.exec(message);
    const sentence = own[key];
    if (!found || sentence === undefined) continue;
    const values = new Map(names.map((name, index) => [name, found[index + 1] ?? '']));
    return sentence.replaceAll(PLACE, (_place, name: string) => shown(name, values.get(name) ?? ''));
  }
  return message;
}

/** A value that is nothing but a number with decimals, by which its language can write it; null for any other. */
export function decimalNumber(value: string): { readonly value: number; readonly decimals: number } | null {
  const found = /^-?\d+(?:\.(\d+))?$/.exec(value);
  return found ? { value: Number(value), decimals: found[1]?.length ?? 0 } : null;
}
