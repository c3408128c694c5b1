import { readFileSync, statSync } from 'node:fs';
import { StartupError } from '../startup-error.ts';

/** The account that PostgreSQL runs as when Seatwell itself runs as root. */
export interface ServerUser {
  readonly uid: number;
  readonly gid: number;
}

/**
 * PostgreSQL refuses to run as root. As root it therefore runs as whoever owns the data, or, for new data,
 * as an unprivileged account that exists already: adding an account to the host is not ours to do.
 * @param clusterFolder the folder of the database files; need not exist yet
 * @returns undefined when Seatwell runs as an ordinary user: PostgreSQL then runs as the same user
 * @throws StartupError where the host has no such account, or root is not supported
 */
export function serverUser(clusterFolder: string): ServerUser | undefined {
  if (process.getuid?.() !== 0) return undefined;
  if (process.platform !== 'linux') {
    throw new StartupError(
      `The embedded PostgreSQL runs as root on Linux only, and this is ${process.platform}: start Seatwell as an ordinary user, or set DATABASE_URL.`,
    );
  }
  const owner = statSync(clusterFolder, { throwIfNoEntry: false });
  if (owner !== undefined && owner.uid !== 0) return { uid: owner.uid, gid: owner.gid };
  const accounts = readFileSync('/etc/passwd', 'utf8').split('\n');
  for (const name of ['nobody', 'daemon']) {
    const [, , uid, gid] = accounts.find((line) => line.startsWith(`${name}:`))?.split(':') ?? [];
    if (uid !== undefined && gid !== undefined) return { uid: Number(uid), gid: Number(gid) };
  }
  throw new StartupError(
    'PostgreSQL refuses to run as root, and /etc/passwd has neither "nobody" nor "daemon": start Seatwell as an ordinary user, or set DATABASE_URL.',
  );
}
