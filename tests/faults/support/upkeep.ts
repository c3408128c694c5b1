import { spawn } from 'node:child_process';
import { join } from 'node:path';
import type { Checkout } from './checkout.ts';

export interface Ended {
  readonly code: number | null;
  /** the line of JSON on standard output, parsed; null where there was none */
  readonly said: Record<string, unknown> | null;
  readonly log: string;
}

/** Runs `npm run backup|restore|verify|record-key -- …` in a checkout, as its launcher does, to its end. */
export function upkeep(
  checkout: Checkout,
  command: 'backup' | 'restore' | 'verify' | 'record-key',
  words: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<Ended> {
  const child = spawn(process.execPath, [join('apps', 'server', 'launcher.mjs'), command, '--json', ...words], {
    cwd: checkout.folder,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      PATH: process.env.PATH,
      TMPDIR: checkout.temporaryFolder,
      SEATWELL_CACHE: checkout.cacheFolder,
      ...environment,
    },
  });
  let output = '';
  let log = '';
  child.stdout.on('data', (chunk) => {
    output += chunk;
  });
  child.stderr.on('data', (chunk) => {
    log += chunk;
  });
  return new Promise((resolve) => {
    child.once('close', (code) => resolve({ code, said: output ? JSON.parse(output) : null, log }));
  });
}
