import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { repositoryRoot } from '../repository-root.ts';

export interface MigrationFile {
  /** Name of its folder, `<timestamp>_<what>`: the order is that of the names. */
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the file in hex, as Prisma records it. */
  readonly checksum: string;
}

/** The migrations that this version of Seatwell brings, in the order in which they are applied. */
export function migrationFiles(folder = join(repositoryRoot(), 'prisma', 'migrations')): MigrationFile[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(folder, entry.name, 'migration.sql')))
    .map(({ name }) => {
      const content = readFileSync(join(folder, name, 'migration.sql'));
      const checksum = createHash('sha256').update(content).digest('hex');
      return { name, sql: content.toString('utf8'), checksum };
    })
    .sort((one, other) => (one.name < other.name ? -1 : 1));
}
