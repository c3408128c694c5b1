const TAB = 9;
const NEWLINE = 10;
const BACKSLASH = 92;

const ESCAPED: Readonly<Record<string, string>> = { b: '\b', f: '\f', n: '\n', r: '\r', t: '\t', v: '\v' };

/**
 * Values of one row in the text form of COPY (PostgreSQL manual, COPY, "Text Format"): tabs between values, `\N` for
 * NULL, backslash escapes.
 * @param row with or without its line end
 */
export function valuesOfRow(row: Buffer): (string | null)[] {
  const end = row.at(-1) === NEWLINE ? row.length - 1 : row.length;
  const values: (string | null)[] = [];
  for (let from = 0; from <= end; ) {
    const tab = row.indexOf(TAB, from);
    const to = tab === -1 || tab > end ? end : tab;
    values.push(valueIn(row.subarray(from, to)));
    from = to + 1;
  }
  return values;
}

function valueIn(bytes: Buffer): string | null {
  const text = bytes.toString('utf8');
  if (!bytes.includes(BACKSLASH)) return text;
  if (text === '\\N') return null;
  return text.replaceAll(/\\(.)/gs, (_, letter: string) => ESCAPED[letter] ?? letter);
}

/** Bytes of a `bytea` value as PostgreSQL writes it (`\x…`). */
export const bytesOf = (value: string): Buffer => Buffer.from(value.slice(2), 'hex');

/** Splits blocks of COPY text into rows; a row always ends within its block. */
export function* rowsOfBlock(block: Buffer): Generator<Buffer, void> {
  for (let from = 0; from < block.length; ) {
    const end = block.indexOf(NEWLINE, from);
    const to = end === -1 ? block.length : end + 1;
    yield block.subarray(from, to);
    from = to;
  }
}
