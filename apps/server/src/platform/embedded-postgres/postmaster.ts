import { type ChildProcess, spawn } from 'node:child_process';
import { closeSync, openSync, readFileSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Log } from '../log.ts';
import { StartupError } from '../startup-error.ts';
import type { Binaries } from './binaries.ts';
import { waitUntilGone } from './process-identity.ts';
import type { ServerUser } from './server-user.ts';

const stopLimit_ms = 120_000;
const logLimit_bytes = 5_000_000;

export interface Postmaster {
  readonly process: ChildProcess;
  readonly pid: number;
  /** Whether PostgreSQL had to replay its log because it had not been stopped in order. */
  readonly recovered: boolean;
}

/**
 * The path by which PostgreSQL is told its own folder. As root it runs as another account that cannot walk
 * through a private folder (0700) above; Linux lets it reach its working folder, which we set, by this name.
 */
export function clusterPathFor(user: ServerUser | undefined, clusterFolder: string): string {
  return user === undefined ? clusterFolder : '/proc/self/cwd';
}

/**
 * Starts PostgreSQL and waits until it takes connections, however long a recovery lasts.
 * Detached, so that Ctrl-C at the terminal does not reach it before the server has drained.
 * @throws StartupError when it ends instead, with the last lines of its log
 */
export async function startPostmaster(options: {
  binaries: Binaries;
  clusterFolder: string;
  logFile: string;
  settings: Readonly<Record<string, string>>;
  user: ServerUser | undefined;
  log: Log;
}): Promise<Postmaster> {
  const { binaries, clusterFolder, logFile, settings, user, log } = options;
  const logStart = rotateLog(logFile);
  const logDescriptor = openSync(logFile, 'a', 0o600);
  const parameters = Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  const child = spawn(binaries.postgres, ['-D', clusterPathFor(user, clusterFolder), ...parameters], {
    ...user,
    cwd: clusterFolder,
    detached: true,
    env: serverEnvironment,
    stdio: ['ignore', logDescriptor, logDescriptor],
  });
  closeSync(logDescriptor);
  let ended: string | undefined;
  child.once('error', (error) => {
    ended = error.message;
  });
  child.once('exit', (code, signal) => {
    ended ??= `it ended with ${signal ?? code}`;
  });
  child.unref();

  let nextNotice = Date.now() + 5_000;
  while (pidFile(clusterFolder)?.pid !== child.pid || pidFile(clusterFolder)?.ready !== true) {
    if (ended !== undefined) {
      const lines = readFileSync(logFile).subarray(logStart).toString('utf8').trim().split('\n');
      throw new StartupError(
        `PostgreSQL did not start on ${clusterFolder}: ${ended}. The last lines of ${logFile}:\n${lines.slice(-8).join('\n')}`,
      );
    }
    if (Date.now() > nextNotice) {
      log.info('PostgreSQL is still starting; a recovery after a crash can take a while.');
      nextNotice = Date.now() + 15_000;
    }
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  const written = readFileSync(logFile).subarray(logStart).toString('utf8');
  return {
    process: child,
    pid: child.pid as number,
    recovered: written.includes('automatic recovery in progress'),
  };
}

/** No locale and no PG variables of the caller's: they would change sorting, messages or settings. */
export const serverEnvironment: Readonly<Record<string, string>> = {
  LC_ALL: 'C',
  TZ: 'UTC',
};

/**
 * Ends PostgreSQL in order ("fast": open transactions roll back, a checkpoint is written).
 * @returns whether it is gone
 */
export async function stopPostmaster(pid: number): Promise<boolean> {
  signal(pid, 'SIGINT');
  return waitUntilGone(pid, stopLimit_ms);
}

/** Tells PostgreSQL to end without waiting for it: for the last moment of a process. */
export function signal(pid: number, name: NodeJS.Signals): void {
  try {
    process.kill(pid, name);
  } catch {
    // Gone already.
  }
}

/** What a running PostgreSQL writes about itself; undefined when there is no such file. */
export function pidFile(clusterFolder: string): { pid: number; ready: boolean } | undefined {
  try {
    // Lines: pid, folder, start time, port, socket folder, address, shared memory, status.
    const lines = readFileSync(join(clusterFolder, 'postmaster.pid'), 'utf8').split('\n');
    const pid = Number(lines[0]);
    return Number.isInteger(pid) && pid > 0 ? { pid, ready: lines[7]?.trim() === 'ready' } : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps one earlier log; gives the size of the current one before this start. */
function rotateLog(logFile: string): number {
  const size = statSync(logFile, { throwIfNoEntry: false })?.size ?? 0;
  if (size < logLimit_bytes) return size;
  renameSync(logFile, `${logFile}.1`);
  return 0;
}
