import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import type { Checkout } from './checkout.ts';

export interface Ending {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
}

/** A Seatwell started by its launcher, as `npm start -- --json` starts it. */
export interface Seatwell {
  readonly pid: number;
  readonly process: ChildProcess;
  readonly ended: Promise<Ending>;
  standardOutput(): string;
  /** Everything on standard error so far. */
  log(): string;
  /** Resolves when the log holds the text; rejects when the process ends without. */
  logged(text: string): Promise<void>;
}

const started = new Set<ChildProcess>();

/** Launches without waiting. The environment is a container's: no LANG, nothing but what is given. */
export function launch(
  checkout: Checkout,
  words: readonly string[] = ['--port', '0'],
  environment: Readonly<Record<string, string>> = {},
): Seatwell {
  const child = spawn(process.execPath, [join('apps', 'server', 'launcher.mjs'), '--json', ...words], {
    cwd: checkout.folder,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      PATH: process.env.PATH,
      TMPDIR: checkout.temporaryFolder,
      SEATWELL_CACHE: checkout.cacheFolder,
      ...environment,
    },
  });
  started.add(child);
  let output = '';
  let log = '';
  child.stdout.on('data', (chunk) => {
    output += chunk;
  });
  child.stderr.on('data', (chunk) => {
    log += chunk;
  });
  const ended = new Promise<Ending>((resolve) => {
    child.once('close', (code, signal) => {
      started.delete(child);
      resolve({ code, signal });
    });
  });
  return {
    pid: child.pid as number,
    process: child,
    ended,
    standardOutput: () => output,
    log: () => log,
    logged: (text) =>
      new Promise((resolve, reject) => {
        const look = () => {
          if (log.includes(text)) resolve();
        };
        child.stderr.on('data', look);
        look();
        void ended.then(({ code }) =>
          reject(new Error(`Seatwell ended with ${code} without logging "${text}":\n${log}`)),
        );
      }),
  };
}

/** Launches and waits until it says where it listens. */
export async function start(
  checkout: Checkout,
  words?: readonly string[],
  environment?: Readonly<Record<string, string>>,
): Promise<Seatwell & { readonly url: string }> {
  const seatwell = launch(checkout, words, environment);
  const line = await new Promise<string>((resolve, reject) => {
    seatwell.process.stdout?.on('data', () => {
      const [first, ...more] = seatwell.standardOutput().split('\n');
      if (first !== undefined && more.length > 0) resolve(first);
    });
    void seatwell.ended.then(({ code, signal }) =>
      reject(new Error(`Seatwell did not start (${signal ?? code}):\n${seatwell.log()}`)),
    );
  });
  return { ...seatwell, url: (JSON.parse(line) as { url: string }).url };
}

/** Stops it as Ctrl-C does. */
export async function stop(seatwell: Seatwell): Promise<Ending> {
  seatwell.process.kill('SIGINT');
  return seatwell.ended;
}

/** Ends what a failed test left; its PostgreSQL is ended with the checkout. */
export function killRemaining(): void {
  for (const child of started) child.kill('SIGKILL');
  started.clear();
}
