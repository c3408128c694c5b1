import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { isAlive } from '../../../apps/server/src/platform/embedded-postgres/process-identity.ts';
import type { Checkout } from './checkout.ts';

const cluster = (checkout: Checkout) => join(checkout.dataFolder, 'postgres');

/** Process number of the checkout's PostgreSQL, or undefined when none is recorded. */
export function postmaster(checkout: Checkout): number | undefined {
  try {
    return Number(readFileSync(join(cluster(checkout), 'postmaster.pid'), 'utf8').split('\n')[0]);
  } catch {
    return undefined;
  }
}

export function runningPostmaster(checkout: Checkout): number {
  const pid = postmaster(checkout);
  if (pid === undefined || !isAlive(pid)) throw new Error(`no PostgreSQL runs on ${checkout.dataFolder}`);
  return pid;
}

/** Every process of the checkout's PostgreSQL: whatever has its database files as working folder. */
export function postgresProcesses(checkout: Checkout): number[] {
  const folder = statSync(cluster(checkout), { throwIfNoEntry: false });
  if (folder === undefined) return [];
  return readdirSync('/proc')
    .map(Number)
    .filter((pid) => {
      if (!(pid > 0) || !isAlive(pid)) return false;
      try {
        const { dev, ino } = statSync(`/proc/${pid}/cwd`);
        return dev === folder.dev && ino === folder.ino;
      } catch {
        return false;
      }
    });
}

/** Sends a signal to all of them: SIGSTOP makes the database hang, SIGCONT lets it go on. */
export function signalPostgres(checkout: Checkout, name: NodeJS.Signals): void {
  const signalled = new Set<number>();
  // A backend that began between the look and the signal is found at the next look; a stopped postmaster begins none.
  for (let found = postgresProcesses(checkout); found.length > 0; ) {
    for (const pid of found) {
      signalled.add(pid);
      signal(pid, name);
    }
    found = postgresProcesses(checkout).filter((pid) => !signalled.has(pid));
  }
}

function signal(pid: number, name: NodeJS.Signals): void {
  try {
    process.kill(pid, name);
  } catch (error) {
    // A backend may end by itself between the two.
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
  }
}

/** Ends the checkout's PostgreSQL after a test, whatever became of it. */
export async function endPostgres(checkout: Checkout): Promise<void> {
  while (postgresProcesses(checkout).length > 0) {
    signalPostgres(checkout, 'SIGKILL');
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}

/** The user that a process runs as. */
export function userOf(pid: number): number {
  return statSync(`/proc/${pid}`).uid;
}

/** PostgreSQL's own log, all starts. */
export function postgresLog(checkout: Checkout): string {
  return readFileSync(join(checkout.dataFolder, 'postgres.log'), 'utf8');
}

/** Runs work on a connection of its own to the checkout's database, through its socket. */
export async function withDatabase<T>(
  checkout: Checkout,
  work: (client: pg.Client) => Promise<T>,
  password = readFileSync(join(checkout.dataFolder, 'database-password'), 'utf8').trim(),
): Promise<T> {
  const client = new pg.Client({ host: cluster(checkout), user: 'postgres', password, database: 'seatwell' });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
