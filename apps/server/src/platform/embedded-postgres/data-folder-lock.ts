import { randomBytes } from 'node:crypto';
import { linkSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { StartupError } from '../startup-error.ts';
import { isAlive, processIdentity } from './process-identity.ts';

interface Holder {
  readonly pid: number;
  readonly identity: string;
}

/**
 * Takes the data folder for this process, so that a second Seatwell on it is refused and does not mistake
 * the first one's PostgreSQL for an orphan. The lock of a process that was killed is taken over.
 * @returns releases the lock
 * @throws StartupError while another live process holds it
 */
export function lockDataFolder(dataFolder: string): () => void {
  const lock = join(dataFolder, 'seatwell.pid');
  const draft = join(dataFolder, `.seatwell.pid-${randomBytes(6).toString('hex')}`);
  const self: Holder = {
    pid: process.pid,
    identity: processIdentity(process.pid),
  };
  writeFileSync(draft, JSON.stringify(self), { mode: 0o600 });
  try {
    // A link appears complete or not at all and never replaces one that is there.
    if (!tryLink(draft, lock)) {
      refuseWhileHeld(lock, dataFolder);
      rmSync(lock, { force: true });
      if (!tryLink(draft, lock)) refuseWhileHeld(lock, dataFolder);
    }
  } finally {
    rmSync(draft, { force: true });
  }
  return () => {
    if (readHolder(lock)?.identity === self.identity) rmSync(lock, { force: true });
  };
}

function tryLink(from: string, to: string): boolean {
  try {
    linkSync(from, to);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

function readHolder(lock: string): Holder | undefined {
  try {
    return JSON.parse(readFileSync(lock, 'utf8')) as Holder;
  } catch {
    return undefined;
  }
}

/** The process that holds the data folder, or undefined when none that lives does. */
export function dataFolderHolder(dataFolder: string): number | undefined {
  return livingHolder(join(dataFolder, 'seatwell.pid'));
}

function livingHolder(lock: string): number | undefined {
  const holder = readHolder(lock);
  if (holder === undefined || !isAlive(holder.pid)) return undefined;
  return holder.identity === processIdentity(holder.pid) ? holder.pid : undefined;
}

function refuseWhileHeld(lock: string, dataFolder: string): void {
  const pid = livingHolder(lock);
  if (pid === undefined) return;
  throw new StartupError(
    `The data folder ${dataFolder} is in use by a Seatwell that runs as process ${pid}: stop that one first, or choose another folder with --data.`,
  );
}
