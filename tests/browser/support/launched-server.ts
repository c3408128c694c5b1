import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { DemoAccount } from '../../../prisma/demo/people-and-tools.ts';

export interface LaunchedServer {
  readonly url: string;
  readonly accounts: readonly DemoAccount[];
  /** where plain http redirects from, with --redirect-port */
  readonly redirectUrl?: string;
  /** stops it as Ctrl-C does and removes its data */
  readonly stop: () => Promise<void>;
}

const here = fileURLToPath(new URL('../../..', import.meta.url));

/**
 * Starts the built server on a data folder of its own in the temp folder and on a free port.
 * @param root of the repository, where this file is bundled elsewhere
 */
export async function launchServer(words: readonly string[], root = here): Promise<LaunchedServer> {
  const data = mkdtempSync(join(tmpdir(), 'seatwell-browser-'));
  const child = spawn(
    process.execPath,
    [join('apps', 'server', 'launcher.mjs'), '--json', '--port', '0', '--data', data, ...words],
    { cwd: root, stdio: ['ignore', 'pipe', 'pipe'], env: withoutDatabase() },
  );
  let log = '';
  let output = '';
  child.stderr.on('data', (part) => {
    log += part;
  });
  const ended = new Promise<void>((resolve) => {
    child.once('close', () => resolve());
  });
  const stop = async () => {
    child.kill('SIGINT');
    await ended;
    rmSync(data, { recursive: true, force: true });
  };
  try {
    const line = await new Promise<string>((resolve, reject) => {
      child.stdout.on('data', (part) => {
        output += part;
        if (output.includes('\n')) resolve(output.split('\n')[0] ?? '');
      });
      void ended.then(() => reject(new Error(`The server did not start:\n${log}`)));
    });
    return { ...(JSON.parse(line) as Omit<LaunchedServer, 'stop'>), stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

// An address of a database that is meant for the operator's own server must not be filled with the demo.
function withoutDatabase(): NodeJS.ProcessEnv {
  const { DATABASE_URL: _operators, ...environment } = process.env;
  return environment;
}
