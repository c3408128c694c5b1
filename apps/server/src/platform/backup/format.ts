/**
 * The file of a backup: gzip over lines of JSON and counted blocks.
 *
 *   {"format":"seatwell-backup", …}           the head
 *   {"table":"account","columns":[…]}         for each table, in the order of their names:
 *   #<number of bytes>                        a block of whole rows in the text form of COPY, any number of times
 *   <bytes>
 *   {"end":"account","rows":…,"sha256":"…"}   SHA-256 of the table's rows
 *   {"total":…}                               the end: all of it again, and SHA-256 of everything before
 */
export interface BackupHead {
  readonly format: 'seatwell-backup';
  readonly formatVersion: 1;
  /** version of Seatwell that wrote it */
  readonly seatwell: string;
  /** version of the PostgreSQL that it was read from */
  readonly postgres: string;
  readonly takenAt: string;
  /** what is in it that concerns people, for whoever finds the file */
  readonly holds: string;
  readonly migrations: readonly { readonly name: string; readonly checksum: string }[];
  readonly joints: number;
}

export interface TableTotal {
  readonly table: string;
  readonly rows: number;
  readonly sha256: string;
}

export interface StreamHeadTotal {
  readonly siteId: string;
  readonly streamId: string;
  readonly kind: string;
  readonly sequence: number;
  /** Merkle root, hex */
  readonly root: string;
}

export interface BackupTotal {
  readonly tables: readonly TableTotal[];
  readonly heads: readonly StreamHeadTotal[];
}

export const FORMAT = 'seatwell-backup';
export const FORMAT_VERSION = 1;

export const WHAT_IT_HOLDS =
  'The whole database: names, e-mail addresses and password hashes of people, photos and certificates, and the record. Sessions are left out. Keep it where only those may read it who may read the database.';
