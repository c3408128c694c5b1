import { realpathSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Log } from '../log.ts';
import { StartupError } from '../startup-error.ts';
import { pidFile, stopPostmaster } from './postmaster.ts';
import { hasProcessEntry, isAlive, processesIn, waitUntilGone, workingFolder } from './process-identity.ts';

const backendLimit_ms = 30_000;

/**
 * Clears what a killed Seatwell left on this folder: a PostgreSQL that still runs is stopped in order, the
 * processes of one that was killed too are waited for. Call with the data folder locked: then no living
 * Seatwell owns them.
 * @throws StartupError when something does not end
 */
export async function stopOrphan(clusterFolder: string, log: Log): Promise<void> {
  const found = pidFile(clusterFolder);
  if (found === undefined) return;
  if (isAlive(found.pid) && worksIn(found.pid, clusterFolder)) {
    log.warn(
      `A Seatwell that was killed left its PostgreSQL running (process ${found.pid}); stopping it in order before starting anew.`,
    );
    if (!(await stopPostmaster(found.pid))) throw doesNotEnd(found.pid, clusterFolder);
  }
  for (const pid of processesIn(realpathSync(clusterFolder))) {
    if (!(await waitUntilGone(pid, backendLimit_ms))) throw doesNotEnd(pid, clusterFolder);
  }
  // PostgreSQL takes any process with the recorded number for the old server: an ended one that nobody has
  // collected, or another program that has the number now. Nothing works on the files any more, so the
  // records can go; where the number is free PostgreSQL clears them itself.
  if (hasProcessEntry(found.pid)) {
    for (const record of ['postmaster.pid', '.s.PGSQL.5432.lock']) {
      rmSync(join(clusterFolder, record), { force: true });
    }
  }
}

/** Where the system does not tell, a live process with the recorded number counts as the server. */
function worksIn(pid: number, clusterFolder: string): boolean {
  const folder = workingFolder(pid);
  return folder === undefined || folder === realpathSync(clusterFolder);
}

function doesNotEnd(pid: number, clusterFolder: string): StartupError {
  return new StartupError(
    `PostgreSQL, left running as process ${pid} on ${clusterFolder}, does not end: end it with "kill -INT ${pid}", then start again.`,
  );
}
