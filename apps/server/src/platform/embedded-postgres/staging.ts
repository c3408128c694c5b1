import { randomBytes } from 'node:crypto';
import { chmodSync, cpSync, existsSync, lstatSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Log } from '../log.ts';
import { StartupError } from '../startup-error.ts';
import { makeLibraryLinks } from './library-links.ts';
import type { BinaryPackage } from './package-folder.ts';

/**
 * Copies the binaries to `<parent>/postgresql-<version>`, complete or not at all; a copy that is there
 * already is used.
 * @throws StartupError when somebody else could have put programs there; file system errors as they are
 */
export function stageBinaries(source: BinaryPackage, parent: string, log: Log): string {
  const target = join(parent, `postgresql-${source.version}`);
  mkdirSync(parent, { recursive: true, mode: 0o755 });
  refuseForeignFolder(parent);
  if (existsSync(target)) return target;

  log.info(`Copying the PostgreSQL binaries once to ${target}, where the database's account can run them.`);
  chmodSync(parent, 0o755);
  const draft = join(parent, `.draft-${randomBytes(6).toString('hex')}`);
  try {
    cpSync(source.folder, draft, {
      recursive: true,
      verbatimSymlinks: true,
      filter: isNeededToRun,
    });
    makeLibraryLinks(draft);
    openToReaders(draft);
    renameSync(draft, target);
  } catch (error) {
    // Another start may have finished the same copy first.
    if (!existsSync(target)) throw error;
  } finally {
    rmSync(draft, { recursive: true, force: true });
  }
  return target;
}

/** In a shared temporary folder anyone may have made ours first and put a program of theirs in it. */
function refuseForeignFolder(folder: string): void {
  const found = lstatSync(folder);
  if (!found.isDirectory() || found.uid !== process.getuid?.() || (found.mode & 0o022) !== 0) {
    throw new StartupError(
      `${folder} is a link, belongs to another user or can be written to by others, so no programs are run from it: remove it.`,
    );
  }
}

function isNeededToRun(path: string): boolean {
  return !path.endsWith('.a') && !path.endsWith('/pkgconfig');
}

function openToReaders(folder: string): void {
  chmodSync(folder, 0o755);
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) openToReaders(path);
    else if (entry.isFile()) chmodSync(path, (lstatSync(path).mode & 0o111) !== 0 ? 0o755 : 0o644);
  }
}
