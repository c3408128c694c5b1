import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** sun_path holds 108 bytes on Linux and 104 on macOS, the ending zero included. */
const longestPath_bytes = 103;
const socketName = '.s.PGSQL.5432';

/**
 * The folder by which clients reach the socket, which lies among the database files: private, and no two
 * checkouts can meet. Where the path is too long for a socket address, a link in a private temporary
 * folder stands for it.
 * @returns the folder, and what removes the link
 */
export function socketFolder(clusterFolder: string): {
  folder: string;
  remove: () => void;
} {
  if (fits(clusterFolder)) return { folder: clusterFolder, remove: () => undefined };
  // A temporary folder set by the user may itself be too long.
  const parent = fits(join(tmpdir(), 'seatwell-XXXXXX', 'd')) ? tmpdir() : '/tmp';
  const link = mkdtempSync(join(parent, 'seatwell-'));
  symlinkSync(clusterFolder, join(link, 'd'));
  return {
    folder: join(link, 'd'),
    remove: () => rmSync(link, { recursive: true, force: true }),
  };
}

function fits(folder: string): boolean {
  return Buffer.byteLength(join(folder, socketName)) <= longestPath_bytes;
}
