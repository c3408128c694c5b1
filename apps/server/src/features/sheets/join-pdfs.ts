import { createHash } from 'node:crypto';
import { setImmediate as nextTurn } from 'node:timers/promises';

interface PdfObject {
  /** up to the stream, or the whole object */
  readonly dictionary: string;
  /** the stream with its keywords; empty where there is none */
  readonly stream: string;
}

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

/**
 * Joins files of the typesetter into one, in order. A file with an odd count of pages gets an empty one, so that the
 * next begins on a new leaf when both sides are printed.
 * @param pdfs untagged, from `typeset`
 * @param title of the joined file
 * @throws Error for a file that is built otherwise
 */
export async function joinPdfs(
  pdfs: readonly Buffer[],
  title: string,
): Promise<{ readonly bytes: Buffer; readonly pages: number }> {
  const written: string[] = [];
  const kids: number[] = [];
  // 1 is the catalogue, 2 the page tree, 3 the title; what is joined follows.
  let next = 4;
  for (const [index, bytes] of pdfs.entries()) {
    // Others are answered between the files.
    await nextTurn();
    const pdf = bytes.toString('latin1');
    const objects = new Map([...offsetsOf(pdf)].map(([number, offset]) => [number, objectAt(pdf, offset)] as const));
    const root = [...objects.values()].find((object) => typeOf(object) === 'Catalog') ?? refuse('it has no catalogue');
    const tree = Number(/\/Pages (\d+) 0 R/.exec(root.dictionary)?.[1] ?? refuse('it has no pages'));
    const pages = pagesUnder(objects, tree);
    const numbers = new Map(needed(objects, pages).map((number) => [number, next++] as const));
    for (const [number, own] of numbers) {
      const { dictionary, stream } = objects.get(number) ?? refuse(`object ${number} is missing`);
      const renumbered = dictionary.replaceAll(
        /(\/Parent )?(\d+) 0 R/g,
        (_whole, parent: string | undefined, reference: string) =>
          parent
            ? '/Parent 2 0 R'
            : `${numbers.get(Number(reference)) ?? refuse(`object ${reference} is missing`)} 0 R`,
      );
      written.push(`${own} 0 obj\n${renumbered}\n${stream}${stream ? '\n' : ''}endobj\n`);
    }
    kids.push(...pages.map((page) => numbers.get(page) ?? 0));
    if (pages.length % 2 === 1 && index < pdfs.length - 1) {
      written.push(`${next} 0 obj\n<< /Type /Page /Parent 2 0 R /MediaBox ${A4} /Resources << >> >>\nendobj\n`);
      kids.push(next++);
    }
  }
  const name = Buffer.from(`\ufeff${title}`, 'utf16le').swap16().toString('hex');
  const front = [
    '1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n',
    `2 0 obj\n<< /Type /Pages /Count ${kids.length} /Kids [${kids.map((kid) => `${kid} 0 R`).join(' ')}] >>\nendobj\n`,
    `3 0 obj\n<< /Title <${name}> >>\nendobj\n`,
  ];
  return { bytes: assembled([...front, ...written]), pages: kids.length };
}

/** Objects numbered from 1 in order, with head, cross-reference and trailer. */
function assembled(objects: readonly string[]): Buffer {
  const head = '%PDF-1.7\n%\x80\x80\x80\x80\n';
  let offset = head.length;
  const entries = objects.map((object) => {
    const entry = `${String(offset).padStart(10, '0')} 00000 n \n`;
    offset += object.length;
    return entry;
  });
  const body = head + objects.join('');
  const hash = createHash('md5').update(body, 'latin1').digest('hex');
  const size = objects.length + 1;
  const trailer = `trailer\n<< /Size ${size} /Root 1 0 R /Info 3 0 R /ID [<${hash}> <${hash}>] >>\nstartxref\n${offset}\n%%EOF\n`;
  return Buffer.from(`${body}xref\n0 ${size}\n0000000000 65535 f \n${entries.join('')}${trailer}`, 'latin1');
}
