import { crc32 } from 'node:zlib';

export interface StoredPart {
  readonly name: string;
  readonly content: Buffer;
}

/** A zip archive whose parts are stored without compression (APPNOTE 4.3). */
export function storedZip(parts: readonly StoredPart[]): Buffer {
  const files: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, content } of parts) {
    const nameBytes = Buffer.from(name);
    const shared = Buffer.alloc(26);
    shared.writeUInt16LE(20, 0);
    shared.writeUInt32LE(crc32(content), 10);
    shared.writeUInt32LE(content.length, 14);
    shared.writeUInt32LE(content.length, 18);
    shared.writeUInt16LE(nameBytes.length, 22);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    files.push(Buffer.from('PK\x03\x04', 'latin1'), shared, nameBytes, content);
    directory.push(Buffer.from('PK\x01\x02\x14\x00', 'latin1'), shared, tail, nameBytes);
    offset += 30 + nameBytes.length + content.length;
  }
  const directoryBytes = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(parts.length, 8);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(directoryBytes.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...files, directoryBytes, end]);
}
