import { randomBytes } from 'node:crypto';
import { existsSync, linkSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { StartupError } from '../startup-error.ts';

/**
 * Reads a file that only this user may read.
 * @throws StartupError when others can read it, or it is no JSON of ours
 */
export function readPrivateJson<T>(path: string): T | undefined {
  if (!existsSync(path)) return undefined;
  const mode = statSync(path).mode & 0o777;
  if ((mode & 0o077) !== 0) {
    throw new StartupError(
      `Others can read ${path} (mode ${mode.toString(8)}), which holds a private key: close it with "chmod 600", and where somebody may have read it remove its folder, so that a new authority is made that devices trust anew.`,
    );
  }
  try {
    return JSON.parse(readFileSync(path, 'utf8')) as T;
  } catch (error) {
    throw new StartupError(
      `${path} cannot be read (${(error as Error).message}): bring it back from a copy, or remove its folder, so that a new authority is made that devices trust anew.`,
    );
  }
}

/** Writes it complete or not at all. @param how `keep-first`: what another process wrote meanwhile stays */
export function writePrivateJson(path: string, content: unknown, how: 'replace' | 'keep-first'): void {
  const draft = `${path}.${randomBytes(6).toString('hex')}`;
  writeFileSync(draft, JSON.stringify(content, null, 1), { mode: 0o600, flag: 'wx' });
  try {
    if (how === 'replace') renameSync(draft, path);
    else linkSync(draft, path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    rmSync(draft, { force: true });
  }
}
