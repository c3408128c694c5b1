import { inflateSync } from 'node:zlib';

/** A run of text as it stands on a page: its first point in points from the lower left corner. */
export interface TextRun {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

type Matrix = readonly [number, number, number, number, number, number];
type Token = {
  readonly kind: 'operator' | 'name' | 'number' | 'string' | 'array';
  readonly value: string;
  items?: Token[];
};

const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
];

// Letters of Arabic and Devanagari are put together from glyphs, not each of which stands for a character.
const APART = -1;

interface PdfObject {
  readonly dictionary: string;
  readonly stream: string | null;
}

/** Indirect objects of a file without object streams, as the product writes them. */
function objectsOf(pdf: string): Map<string, PdfObject> {
  const objects = new Map<string, PdfObject>();
  const start = /(?:^|\n)(\d+) 0 obj\s/g;
  for (let match = start.exec(pdf); match; match = start.exec(pdf)) {
    const from = start.lastIndex;
    const end = pdf.indexOf('endobj', from);
    const streamAt = pdf.indexOf('stream\n', from);
    if (streamAt === -1 || streamAt > end) {
      objects.set(match[1] ?? '', { dictionary: pdf.slice(from, end), stream: null });
      continue;
    }
    const dictionary = pdf.slice(from, streamAt);
    const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1]);
    const raw = pdf.slice(streamAt + 7, streamAt + 7 + length);
    const stream = dictionary.includes('/FlateDecode')
      ? inflateSync(Buffer.from(raw, 'latin1')).toString('latin1')
      : raw;
    objects.set(match[1] ?? '', { dictionary, stream });
    start.lastIndex = streamAt + 7 + length;
  }
  return objects;
}

const utf16 = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le');

/** Characters by glyph code, from a font's ToUnicode map. */
function charactersOf(map: string): Map<number, string> {
  const characters = new Map<number, string>();
  for (const [, block] of map.matchAll(/beginbfchar\s([\s\S]*?)endbfchar/g)) {
    for (const [, code, to] of (block ?? '').matchAll(/<([0-9A-F]+)>\s*<([0-9A-F]+)>/gi))
      characters.set(Number.parseInt(code ?? '', 16), utf16(to ?? ''));
  }
  for (const [, block] of map.matchAll(/beginbfrange\s([\s\S]*?)endbfrange/g)) {
    for (const [, low, high, to] of (block ?? '').matchAll(/<([0-9A-F]+)>\s*<([0-9A-F]+)>\s*<([0-9A-F]+)>/gi)) {
      const first = Number.parseInt(low ?? '', 16);
      for (let code = first; code <= Number.parseInt(high ?? '', 16); code += 1)
        characters.set(code, String.fromCharCode(Number.parseInt(to ?? '', 16) + code - first));
    }
  }
  return characters;
}

const ESCAPES: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

function literal(source: string, from: number): { value: string; next: number } {
  let value = '';
  let depth = 1;
  let at = from + 1;
  for (; depth > 0 && at < source.length; at += 1) {
    const sign = source[at] ?? '';
    if (sign === '\\') {
      const octal = /^[0-7]{1,3}/.exec(source.slice(at + 1, at + 4))?.[0];
      if (octal) value += String.fromCharCode(Number.parseInt(octal, 8));
      else value += ESCAPES[source[at + 1] ?? ''] ?? source[at + 1] ?? '';
      at += octal ? octal.length : 1;
      continue;
    }
    if (sign === '(') depth += 1;
    if (sign === ')') depth -= 1;
    if (depth > 0) value += sign;
  }
  return { value, next: at };
}

function tokensOf(source: string): Token[] {
  const found: Token[] = [];
  let into: Token[] = found;
  const word = /\s+|<<|>>|\[|\]|\(|<([0-9A-Fa-f\s]*)>|\/[^\s/[\]()<>]*|[^\s/[\]()<>]+/gy;
  for (let match = word.exec(source); match; match = word.exec(source)) {
    const [text, hex] = match;
    if (/^\s/.test(text)) continue;
    if (text === '[') {
      into = [];
      found.push({ kind: 'array', value: '', items: into });
    } else if (text === ']') into = found;
    else if (text === '(') {
      const { value, next } = literal(source, match.index);
      into.push({ kind: 'string', value });
      word.lastIndex = next;
    } else if (hex !== undefined) into.push({ kind: 'string', value: Buffer.from(hex, 'hex').toString('latin1') });
    else if (text.startsWith('/')) into.push({ kind: 'name', value: text.slice(1) });
    else if (/^[-+.\d]/.test(text)) into.push({ kind: 'number', value: text });
    else into.push({ kind: 'operator', value: text });
  }
  return found;
}

/** Marked content: what its glyphs stand for, or that they run backwards. */
interface Mark {
  readonly actual: string | null;
  readonly reversed: boolean;
  read: boolean;
}

const utf16be = (bytes: string) => utf16(Buffer.from(bytes.slice(2), 'latin1').toString('hex'));

function markOf(operands: readonly Token[]): Mark {
  const at = operands.findIndex(({ kind, value }) => kind === 'name' && value === 'ActualText');
  const actual = at === -1 ? null : utf16be(operands[at + 1]?.value ?? '');
  const reversed = operands.some(({ kind, value }) => kind === 'name' && value === 'ReversedChars');
  return { actual, reversed, read: false };
}

function runsOf(content: string, fonts: ReadonlyMap<string, ReadonlyMap<number, string>>): TextRun[] {
  const runs: TextRun[] = [];
  const stack: Matrix[] = [];
  let matrix = IDENTITY;
  let text = IDENTITY;
  let font: ReadonlyMap<number, string> | undefined;
  let operands: Token[] = [];
  const marks: Mark[] = [];
  const shown = (bytes: string): string => {
    let out = '';
    for (let at = 0; at + 1 < bytes.length; at += 2) {
      const character = font?.get(bytes.charCodeAt(at) * 256 + bytes.charCodeAt(at + 1)) ?? font?.get(APART);
      if (character === undefined) throw new Error('A glyph of the page has no character: its text cannot be copied.');
      out += character;
    }
    return out;
  };
  const matrixOf = (): Matrix => operands.slice(-6).map(({ value }) => Number(value)) as unknown as Matrix;
  for (const token of tokensOf(content)) {
    if (token.kind !== 'operator') {
      operands.push(token);
      continue;
    }
    if (token.value === 'q') stack.push(matrix);
    else if (token.value === 'Q') matrix = stack.pop() ?? IDENTITY;
    else if (token.value === 'cm') matrix = times(matrixOf(), matrix);
    else if (token.value === 'Tm') text = matrixOf();
    else if (token.value === 'Tf') font = fonts.get(operands.at(-2)?.value ?? '');
    else if (token.value === 'Tj' || token.value === 'TJ') {
      const last = operands.at(-1);
      const parts = last?.items ?? (last ? [last] : []);
      const at = times(text, matrix);
      const glyphs = parts.filter(({ kind }) => kind === 'string').map(({ value }) => value);
      const said = marks.findLast(({ actual }) => actual !== null);
      let drawn = '';
      if (said && !said.read) drawn = said.actual ?? '';
      else if (!said) drawn = glyphs.map(shown).join('');
      if (said) said.read = true;
      if (marks.some(({ reversed }) => reversed)) drawn = [...drawn].reverse().join('');
      runs.push({ text: drawn, x: at[4], y: at[5] });
    } else if (token.value === 'BDC' || token.value === 'BMC') marks.push(markOf(operands));
    else if (token.value === 'EMC') marks.pop();
    operands = [];
  }
  return runs;
}

/**
 * The text of a PDF as the product writes it, page by page: what a reader would copy from it.
 * @throws Error for a glyph that has no character, and a file that is built otherwise
 */
export function pdfPages(bytes: Buffer): TextRun[][] {
  const objects = objectsOf(bytes.toString('latin1'));
  const kids = [...objects.values()].find(({ dictionary }) => /\/Type \/Pages\s/.test(dictionary))?.dictionary;
  const pages = [...(/\/Kids \[([^\]]*)\]/.exec(kids ?? '')?.[1]?.matchAll(/(\d+) 0 R/g) ?? [])].map(
    ([, id]) => id ?? '',
  );
  if (pages.length === 0) throw new Error('The PDF has no page that can be read.');
  return pages.map((id) => {
    const { dictionary } = objects.get(id) ?? { dictionary: '' };
    const named = /\/Font <<([^>]*)>>/.exec(dictionary)?.[1] ?? '';
    const fonts = new Map(
      [...named.matchAll(/\/(\w+) (\d+) 0 R/g)].map(([, name, fontId]) => {
        const toUnicode = /\/ToUnicode (\d+) 0 R/.exec(objects.get(fontId ?? '')?.dictionary ?? '')?.[1];
        const characters = charactersOf(objects.get(toUnicode ?? '')?.stream ?? '');
        if (/\+NotoSans(Arabic|Devanagari)-/.test(objects.get(fontId ?? '')?.dictionary ?? ''))
          characters.set(APART, '');
        return [name ?? '', characters] as const;
      }),
    );
    const contents = /\/Contents (\d+) 0 R/.exec(dictionary)?.[1] ?? '';
    return runsOf(objects.get(contents)?.stream ?? '', fonts);
  });
}

/** All text of a PDF on one line, spaces as one, to look for words in. */
export const pdfText = (bytes: Buffer): string =>
  pdfPages(bytes)
    .flat()
    .map(({ text }) => text)
    .join(' ')
    .replaceAll(/\s+/g, ' ');

/** Names of the fonts inside. */
export const pdfFonts = (bytes: Buffer): string[] => [
  ...new Set([...bytes.toString('latin1').matchAll(/\/BaseFont \/\w+\+([\w-]+)/g)].map(([, name]) => name ?? '')),
];
