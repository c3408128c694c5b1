import { crc32, deflateRawSync } from 'node:zlib';

export interface ZipPart {
  readonly name: string;
  readonly content: string | Buffer;
  /** The uncompressed size that the directory states, where it is to differ from the true one. */
  readonly statedSize?: number;
  readonly encrypted?: boolean;
  /** Present in the file, left out of the directory. */
  readonly hidden?: boolean;
}

/** Writes a zip archive by hand (APPNOTE 4.3), also ones that no honest program writes. */
export function zipOf(parts: readonly ZipPart[]): Buffer {
  const files: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, content, statedSize, encrypted, hidden } of parts) {
    const data = Buffer.from(content);
    const packed = deflateRawSync(data);
    const shared = Buffer.alloc(26);
    shared.writeUInt16LE(20, 0);
    shared.writeUInt16LE(encrypted === true ? 1 : 0, 2);
    shared.writeUInt16LE(8, 4);
    shared.writeUInt32LE(crc32(data), 10);
    shared.writeUInt32LE(packed.length, 14);
    shared.writeUInt32LE(statedSize ?? data.length, 18);
    shared.writeUInt16LE(Buffer.byteLength(name), 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), shared, Buffer.from(name), packed]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    if (hidden !== true) {
      directory.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x00', 'latin1'), shared, tail, Buffer.from(name)]));
    }
    files.push(local);
    offset += local.length;
  }
  const directoryBytes = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(directory.length, 8);
  end.writeUInt16LE(directory.length, 10);
  end.writeUInt32LE(directoryBytes.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...files, directoryBytes, end]);
}

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** The parts of a workbook with one sheet "Register" whose sheet data is given as XML. */
export function workbookParts(sheetXml: string, extra: Partial<ZipPart> = {}): readonly ZipPart[] {
  return [
    {
      name: 'xl/workbook.xml',
      content: `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="Register" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    },
    {
      name: 'xl/_rels/workbook.xml.rels',
      content: `<Relationships><Relationship Id="rId1" Type="${relations}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    },
    { name: 'xl/worksheets/sheet1.xml', content: `<worksheet xmlns="${main}">${sheetXml}</worksheet>`, ...extra },
  ];
}
