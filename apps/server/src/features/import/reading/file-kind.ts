import { megabytes, type ReadingLimits, ReadingRefusal } from './reading-result.ts';

const startsWith = (bytes: Uint8Array, ...signature: number[]) =>
  signature.every((byte, index) => bytes[index] === byte);

const otherFiles: readonly (readonly [string, ...number[]])[] = [
  ['a PDF document', 0x25, 0x50, 0x44, 0x46],
  ['a PNG image', 0x89, 0x50, 0x4e, 0x47],
  ['a JPEG image', 0xff, 0xd8, 0xff],
  ['a GIF image', 0x47, 0x49, 0x46, 0x38],
  ['a compressed archive', 0x1f, 0x8b],
  ['a compressed archive', 0x52, 0x61, 0x72, 0x21],
  ['a compressed archive', 0x37, 0x7a, 0xbc, 0xaf],
  ['an RTF document', 0x7b, 0x5c, 0x72, 0x74, 0x66],
];

/**
 * Tells a workbook from a text file by the first bytes; the name of a file proves nothing.
 * @throws ReadingRefusal for empty, too large, encrypted, old or other files
 */
export function fileKind(bytes: Uint8Array, limits: ReadingLimits): 'csv' | 'xlsx' {
  if (bytes.length === 0)
    throw new ReadingRefusal(
      'file-empty',
      'The file is empty (0 bytes). Save the register again and choose that file.',
    );
  if (bytes.length > limits.fileBytes) {
    throw new ReadingRefusal(
      'file-too-large',
      `The file has ${megabytes(bytes.length)}, at most ${megabytes(limits.fileBytes)} are read. Remove pictures and other sheets, or split it.`,
    );
  }
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) throw compoundFile(bytes);
  if (startsWith(bytes, 0x50, 0x4b)) return 'xlsx';
  const other = otherFiles.find(([, ...signature]) => startsWith(bytes, ...signature));
  if (other !== undefined) {
    throw new ReadingRefusal(
      'not-a-spreadsheet',
      `The file is ${other[0]}, not a spreadsheet. Save the register as XLSX or CSV.`,
    );
  }
  const start = Buffer.from(bytes.subarray(0, 1024)).toString('latin1').replace(/^ï»¿/, '').trimStart().toLowerCase();
  if (
    start.startsWith('<!doctype html') ||
    start.startsWith('<html') ||
    start.startsWith('<?xml') ||
    start.startsWith('<table')
  ) {
    throw new ReadingRefusal(
      'not-a-spreadsheet',
      'The file is a web page or XML, whatever its name says. Open it in a spreadsheet program and save it as XLSX.',
    );
  }
  return 'csv';
}

/** Old binary workbooks and encrypted new ones share one container. */
function compoundFile(bytes: Uint8Array): ReadingRefusal {
  const encrypted = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).includes(
    Buffer.from('EncryptedPackage', 'utf16le'),
  );
  return encrypted
    ? new ReadingRefusal(
        'encrypted',
        'The workbook is protected by a password. Save a copy without the password and choose that.',
      )
    : new ReadingRefusal(
        'old-xls',
        'The file is in the old XLS format. Open it in a spreadsheet program and save it as XLSX.',
      );
}
