import { createHash } from 'node:crypto';
import { setImmediate as nextTurn } from 'node:timers/promises';

interface PdfObject {
  /** up to the stream, or the whole object */
  readonly dictionary: string;
  /** the stream with its keywords; empty where there is none */
  readonly stream: string;
}

// Numbers of the objects that the joined file has of its own.
const CATALOGUE = 1;
const TREE = 2;
const INFO = 3;

const A4 = '[0 0 595.2756 841.8898]';
const refuse = (what: string): never => {
  throw new Error(`A PDF cannot be joined: ${what}. Only untagged files of our own typesetter can.`);
};

function offsetsOf(pdf: string): Map<number, number> {
  const start = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(pdf.slice(-64))?.[1] ?? refuse('it has no startxref'));
  const header = /^xref\s+0 (\d+)\s/.exec(pdf.slice(start, start + 64)) ?? refuse('its cross-reference is no table');
  const offsets = new Map<number, number>();
  const entries = start + header[0].length;
  for (let number = 0; number < Number(header[1]); number += 1) {
    const entry = pdf.slice(entries + number * 20, entries + number * 20 + 20);
    if (entry[17] === 'n') offsets.set(number, Number(entry.slice(0, 10)));
  }
  return offsets;
}

function objectAt(pdf: string, offset: number): PdfObject {
  const from = pdf.indexOf('obj', offset) + 3;
  const end = pdf.indexOf('endobj', from);
  const streamAt = pdf.indexOf('stream\n', from);
  if (streamAt === -1 || streamAt > end) return { dictionary: pdf.slice(from, end).trim(), stream: '' };
  const dictionary = pdf.slice(from, streamAt).trim();
  const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1] ?? refuse('a stream has no length'));
  return { dictionary, stream: `${pdf.slice(streamAt, streamAt + 7 + length)}\nendstream` };
}

const typeOf = ({ dictionary }: PdfObject): string => /\/Type \/(\w+)/.exec(dictionary)?.[1] ?? '';
const references = (text: string): number[] => [...text.matchAll(/(\d+) 0 R/g)].map(([, number]) => Number(number));

function pagesUnder(objects: ReadonlyMap<number, PdfObject>, node: number): number[] {
  const object = objects.get(node) ?? refuse(`object ${node} is missing`);
  if (typeOf(object) === 'Page') return [node];
  return references(/\/Kids \[([^\]]*)\]/.exec(object.dictionary)?.[1] ?? '').flatMap((kid) =>
    pagesUnder(objects, kid),
  );
}

/** What a page needs, the pages themselves and the tree above them left out. */
function needed(objects: ReadonlyMap<number, PdfObject>, pages: readonly number[]): number[] {
  const found = new Set<number>(pages);
  const waiting = [...pages];
  for (let number = waiting.pop(); number !== undefined; number = waiting.pop()) {
    const { dictionary } = objects.get(number) ?? refuse(`object ${number} is missing`);
    for (const reference of references(dictionary.replace(/\/Parent \d+ 0 R/, ''))) {
      if (!found.has(reference)) waiting.push(reference);
      found.add(reference);
    }
  }
  return [...found];
}

export interface JoinOrder {
  /** title of the joined file, asked for when the last has been read */
  readonly title: () => string;
  /** printed on both sides, each file begins on a new leaf: an empty page follows an odd count of pages */
  readonly newLeaf: boolean;
}

type Write = (bytes: Buffer) => Promise<void> | void;

/** Writes numbered objects as they come; what points at others, and the table of places, comes last. */
class PdfWriter {
  readonly #write: Write;
  readonly #places: number[] = [];
  readonly #hash = createHash('md5');
  #length = 0;

  constructor(write: Write) {
    this.#write = write;
  }

  async #put(text: string): Promise<void> {
    const bytes = Buffer.from(text, 'latin1');
    this.#length += bytes.length;
    this.#hash.update(bytes);
    await this.#write(bytes);
  }

  begin = (): Promise<void> => this.#put('%PDF-1.7\n%\x80\x80\x80\x80\n');

  async objects(list: readonly { readonly number: number; readonly body: string }[]): Promise<void> {
    let at = this.#length;
    const texts = list.map(({ number, body }) => {
      const text = `${number} 0 obj\n${body}\nendobj\n`;
      this.#places[number] = at;
      at += text.length;
      return text;
    });
    await this.#put(texts.join(''));
  }

  async end(root: number, info: number): Promise<number> {
    const id = this.#hash.copy().digest('hex');
    const start = this.#length;
    const size = this.#places.length;
    const entries = this.#places.slice(1).map((place) => `${String(place).padStart(10, '0')} 00000 n \n`);
    const trailer = `trailer\n<< /Size ${size} /Root ${root} 0 R /Info ${info} 0 R /ID [<${id}> <${id}>] >>\nstartxref\n${start}\n%%EOF\n`;
    await this.#put(`xref\n0 ${size}\n0000000000 65535 f \n${entries.join('')}${trailer}`);
    return this.#length;
  }
}

interface Renumbered {
  readonly objects: { readonly number: number; readonly body: string }[];
  readonly pages: number[];
  readonly next: number;
}

function renumbered(bytes: Buffer, first: number): Renumbered {
  const pdf = bytes.toString('latin1');
  const objects = new Map([...offsetsOf(pdf)].map(([number, offset]) => [number, objectAt(pdf, offset)] as const));
  const root = [...objects.values()].find((object) => typeOf(object) === 'Catalog') ?? refuse('it has no catalogue');
  const tree = Number(/\/Pages (\d+) 0 R/.exec(root.dictionary)?.[1] ?? refuse('it has no pages'));
  const pages = pagesUnder(objects, tree);
  let next = first;
  const numbers = new Map(needed(objects, pages).map((number) => [number, next++] as const));
  const own = [...numbers].map(([old, number]) => {
    const { dictionary, stream } = objects.get(old) ?? refuse(`object ${old} is missing`);
    const body = dictionary.replaceAll(
      /(\/Parent )?(\d+) 0 R/g,
      (_whole, parent: string | undefined, reference: string) =>
        parent
          ? `/Parent ${TREE} 0 R`
          : `${numbers.get(Number(reference)) ?? refuse(`object ${reference} is missing`)} 0 R`,
    );
    return { number, body: stream ? `${body}\n${stream}` : body };
  });
  return { objects: own, pages: pages.map((page) => numbers.get(page) ?? 0), next };
}

/**
 * Joins files of the typesetter into one, in order. Each is written and let go of before the next is asked for, so that a
 * long selection takes no more memory than a short one.
 * @param pdfs untagged, from `typeset`
 * @param write takes the joined file, piece by piece
 * @throws Error for a file that is built otherwise
 */
export async function joinPdfsTo(
  write: Write,
  pdfs: AsyncIterable<Buffer> | Iterable<Buffer>,
  { title, newLeaf }: JoinOrder,
): Promise<{ readonly pages: number; readonly size: number }> {
  const writer = new PdfWriter(write);
  const kids: number[] = [];
  let next = INFO + 1;
  await writer.begin();
  for await (const bytes of pdfs) {
    if (newLeaf && kids.length % 2 === 1) {
      const body = `<< /Type /Page /Parent ${TREE} 0 R /MediaBox ${A4} /Resources << >> >>`;
      await writer.objects([{ number: next, body }]);
      kids.push(next++);
    }
    // Others are answered between the files.
    await nextTurn();
    const joined = renumbered(bytes, next);
    await writer.objects(joined.objects);
    kids.push(...joined.pages);
    next = joined.next;
  }
  const name = Buffer.from(`\ufeff${title()}`, 'utf16le').swap16().toString('hex');
  const tree = `<< /Type /Pages /Count ${kids.length} /Kids [${kids.map((kid) => `${kid} 0 R`).join(' ')}] >>`;
  await writer.objects([
    { number: CATALOGUE, body: `<< /Type /Catalog /Pages ${TREE} 0 R >>` },
    { number: TREE, body: tree },
    { number: INFO, body: `<< /Title <${name}> >>` },
  ]);
  return { pages: kids.length, size: await writer.end(CATALOGUE, INFO) };
}

/** The joined file in memory, for few files. */
export async function joinPdfs(
  pdfs: readonly Buffer[],
  title: string,
): Promise<{ readonly bytes: Buffer; readonly pages: number }> {
  const pieces: Buffer[] = [];
  const { pages } = await joinPdfsTo((bytes) => void pieces.push(bytes), pdfs, { title: () => title, newLeaf: true });
  return { bytes: Buffer.concat(pieces), pages };
}
