import { ReadingRefusal, type SheetInfo } from './reading-result.ts';
import type { ZipEntry } from './zip-archive.ts';

export interface WorkbookSheet extends SheetInfo {
  /** Name of the part of the archive that holds the cells. */
  readonly part: string;
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function decodeEntities(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(\w+));/gi, (whole, hex, decimal, name) => {
    const code = hex ? Number.parseInt(hex, 16) : decimal ? Number(decimal) : undefined;
    if (code !== undefined) return code <= 0x10ffff ? String.fromCodePoint(code) : '';
    return entities[name] ?? whole;
  });
}

/** The value of an attribute of a tag, entities decoded. */
export function attribute(tag: string, name: string): string | undefined {
  const found = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(tag);
  const value = found?.[1] ?? found?.[2];
  return value === undefined ? undefined : decodeEntities(value);
}

/** Parts of the archive by relation id, of one type: `worksheet`, `sharedStrings`, `styles`. */
export function relatedParts(relationsXml: string, type: string): ReadonlyMap<string, string> {
  const parts = new Map<string, string>();
  for (const [tag] of relationsXml.matchAll(/<(?:\w+:)?Relationship\s[^>]*>/g)) {
    const target = attribute(tag, 'Target');
    const id = attribute(tag, 'Id');
    if (id === undefined || target === undefined || !attribute(tag, 'Type')?.endsWith(`/${type}`)) continue;
    parts.set(id, target.startsWith('/') ? target.slice(1) : `xl/${target}`);
  }
  return parts;
}

/** The sheets of a workbook in their order; chart sheets hold no cells and are left out. */
export function sheetsOf(workbookXml: string, relationsXml: string): readonly WorkbookSheet[] {
  const parts = relatedParts(relationsXml, 'worksheet');
  const sheets: WorkbookSheet[] = [];
  for (const [tag] of workbookXml.matchAll(/<(?:\w+:)?sheet\s[^>]*>/g)) {
    const part = parts.get(attribute(tag, '(?:\\w+:)?id') ?? '');
    const name = attribute(tag, 'name');
    if (part === undefined || name === undefined) continue;
    sheets.push({ name, part, hidden: (attribute(tag, 'state') ?? 'visible') !== 'visible' });
  }
  return sheets;
}

/** Refuses archives that are no workbook, saying what they are. */
export function requireWorkbook(entries: readonly ZipEntry[]): void {
  const has = (name: string) => entries.some((entry) => entry.name === name);
  if (has('xl/workbook.xml')) return;
  const what = has('xl/workbook.bin')
    ? 'a binary workbook (XLSB)'
    : has('word/document.xml')
      ? 'a text document'
      : has('content.xml')
        ? 'an OpenDocument file'
        : 'an archive without a workbook';
  throw new ReadingRefusal('not-a-spreadsheet', `The file is ${what}. Save the register as XLSX or CSV.`);
}
