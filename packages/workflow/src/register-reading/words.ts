import { ask, type Cell, type Choice, plainWords, quoted, type Reading, read, refuse } from './reading.ts';

/** One line of a word table: the code and the trade words that mean it. */
export interface Words<Code extends string> {
  readonly code: Code;
  readonly label: string;
  readonly words: RegExp;
  /** Lines of a higher rank win over lower ones: a spiral wound gasket with graphite filler is spiral wound. */
  readonly rank?: number;
}

/** Words that mean one of several codes: they are asked. */
export interface OpenWords<Code extends string> {
  readonly words: RegExp;
  readonly codes: readonly Code[];
}

/**
 * Reads a cell by a table of trade words. The code itself is always accepted. One code: read; several of the
 * same rank: asked; none: refused with the codes that exist.
 *
 * @param cell the cell
 * @param what name of the field in messages, for example `kind of joint`
 * @param table the words of each code
 * @param open words that stand for more than one code
 */
export function parseWords<Code extends string>(
  cell: Cell,
  what: string,
  table: readonly Words<Code>[],
  open: readonly OpenWords<Code>[] = [],
): Reading<Code> {
  const field = what.replaceAll(' ', '-');
  const text = plainWords(cell);
  if (text === '') return refuse(`${field}-missing`, `The ${what} is empty. Enter the ${what}.`);
  const exact = table.find((line) => line.code === text.replaceAll(' ', '-') || plainWords(line.code) === text);
  if (exact) return read(exact.code);
  const label = (code: Code): Choice => ({
    value: code,
    label: table.find((line) => line.code === code)?.label ?? code,
  });
  const found = table.filter((line) => line.words.test(text));
  const top = Math.max(...found.map((line) => line.rank ?? 0));
  const best = found.filter((line) => (line.rank ?? 0) === top);
  if (best.length === 1) return read(best[0]!.code);
  const unsure = best.length > 1 ? best.map((line) => line.code) : open.find((line) => line.words.test(text))?.codes;
  if (unsure) return ask(`${field}-unclear`, `Which ${what} does ${quoted(cell)} mean?`, unsure.map(label));
  return refuse(
    `${field}-unknown`,
    `${quoted(cell)} is no ${what} known here. Use one of: ${table.map((line) => line.label).join(', ')}.`,
  );
}
