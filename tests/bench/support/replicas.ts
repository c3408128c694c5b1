import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** A server process of its own on a database that others use as well. */
export interface Replica {
  readonly url: string;
  /** memory that the process holds, MB */
  readonly resident_MB: () => number;
  readonly stop: () => Promise<void>;
}

/** Starts a server as `npm start` does, on a free port. */
export async function startReplica(databaseUrl: string): Promise<Replica> {
  const child = spawn(process.execPath, ['apps/server/launcher.mjs', '--json', '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, DATABASE_URL: databaseUrl, LOG_LEVEL: 'error' },
  });
  const url = await announced(child);
  return {
    url,
    resident_MB: () => {
      const status = readFileSync(`/proc/${child.pid}/status`, 'utf8');
      return Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1]) / 1024;
    },
    stop: () =>
      new Promise((resolve) => {
        child.once('exit', () => resolve());
        child.kill('SIGTERM');
      }),
  };
}

function announced(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`The replica ended with ${code} before it listened.`)));
    child.stdout?.once('data', (line: Buffer) => resolve((JSON.parse(line.toString('utf8')) as { url: string }).url));
  });
}
