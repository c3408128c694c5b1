import { inflateRawSync } from 'node:zlib';
import { megabytes, type ReadingLimits, ReadingRefusal } from './reading-result.ts';

export interface ZipEntry {
  readonly name: string;
  readonly compressedSize: number;
  readonly uncompressedSize: number;
  readonly method: number;
  readonly headerOffset: number;
}

const damaged = (what: string) =>
  new ReadingRefusal(
    'damaged',
    `The file is damaged: ${what}. Open it in a spreadsheet program, save it again and choose that file.`,
  );

/** Position of the end record of the central directory (APPNOTE 4.3.16), which a comment may follow. */
function endRecord(buffer: Buffer): number {
  const earliest = Math.max(0, buffer.length - 22 - 0xffff);
  for (let at = buffer.length - 22; at >= earliest; at--) {
    if (buffer.readUInt32LE(at) === 0x06054b50) return at;
  }
  throw damaged('the directory of the archive is missing, the file may be cut off');
}

/**
 * The parts that a zip archive says it holds, read without unpacking anything.
 * @throws ReadingRefusal damaged, encrypted or bomb-like
 */
export function zipEntries(buffer: Buffer, limits: ReadingLimits): readonly ZipEntry[] {
  if (buffer.length < 22) throw damaged('it is too short for an archive');
  const end = endRecord(buffer);
  const count = buffer.readUInt16LE(end + 10);
  let at = buffer.readUInt32LE(end + 16);
  const entries: ZipEntry[] = [];
  const names = new Set<string>();
  for (let index = 0; index < count; index++) {
    if (at + 46 > end || buffer.readUInt32LE(at) !== 0x02014b50)
      throw damaged('an entry of its directory is not where it should be');
    if ((buffer.readUInt16LE(at + 8) & 1) === 1) {
      throw new ReadingRefusal(
        'encrypted',
        'The archive is encrypted. Save the workbook without a password and choose that file.',
      );
    }
    const nameLength = buffer.readUInt16LE(at + 28);
    const name = buffer.toString('utf8', at + 46, at + 46 + nameLength).replaceAll('\\', '/');
    if (names.has(name)) throw damaged(`it holds ${name} twice`);
    names.add(name);
    entries.push({
      name,
      method: buffer.readUInt16LE(at + 10),
      compressedSize: buffer.readUInt32LE(at + 20),
      uncompressedSize: buffer.readUInt32LE(at + 24),
      headerOffset: buffer.readUInt32LE(at + 42),
    });
    at += 46 + nameLength + buffer.readUInt16LE(at + 30) + buffer.readUInt16LE(at + 32);
  }
  refuseBombs(entries, limits);
  return entries;
}

/** A part of 4 GB or more stands as 0xffffffff here and falls to the same limit. */
function refuseBombs(entries: readonly ZipEntry[], limits: ReadingLimits): void {
  const unzipped = entries.reduce((sum, entry) => sum + entry.uncompressedSize, 0);
  const zipped = entries.reduce((sum, entry) => sum + entry.compressedSize, 0);
  if (unzipped > limits.unzippedBytes) {
    throw new ReadingRefusal(
      'bomb-like',
      `Unpacked, the workbook would have ${megabytes(unzipped)}; at most ${megabytes(limits.unzippedBytes)} are read. Remove other sheets and empty formatted rows, or split it.`,
    );
  }
  const ratio = Math.round(unzipped / Math.max(1, zipped));
  if (unzipped > 20 * 1024 * 1024 && ratio > limits.ratio) {
    throw new ReadingRefusal(
      'bomb-like',
      `The workbook unpacks to ${ratio} times its size (${megabytes(unzipped)}); at most ${limits.ratio} times is taken for a register. Save the register alone as a new XLSX file.`,
    );
  }
}

/**
 * Unpacks one part. It may not grow beyond the size that the directory states: a directory that lies is a bomb.
 * @throws ReadingRefusal damaged or bomb-like
 */
export function unzipEntry(buffer: Buffer, entry: ZipEntry): Buffer {
  const at = entry.headerOffset;
  if (at + 30 > buffer.length || buffer.readUInt32LE(at) !== 0x04034b50)
    throw damaged(`${entry.name} is not where it should be`);
  const start = at + 30 + buffer.readUInt16LE(at + 26) + buffer.readUInt16LE(at + 28);
  const packed = buffer.subarray(start, start + entry.compressedSize);
  if (entry.method === 0) return packed;
  if (entry.method !== 8) throw damaged(`${entry.name} is packed in an unknown way`);
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, entry.uncompressedSize) });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') {
      throw new ReadingRefusal(
        'bomb-like',
        `${entry.name} unpacks to more than the ${entry.uncompressedSize} bytes that the file states. The file is not read; save the register again from a spreadsheet program.`,
      );
    }
    throw damaged(`${entry.name} cannot be unpacked`);
  }
}
