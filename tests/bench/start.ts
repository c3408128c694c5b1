import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rounded } from './support/statistics.ts';

/** From the command to the first answer of health: on an empty folder, and again on its data. */
export async function bench(): Promise<object> {
  const data = mkdtempSync(join(tmpdir(), 'seatwell-bench-'));
  try {
    await seconds(data);
    rmSync(data, { recursive: true, force: true });
    return { cold_s: rounded(await seconds(data)), again_s: rounded(await seconds(data)) };
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
}

function seconds(data: string): Promise<number> {
  const start = performance.now();
  const server = spawn(process.execPath, ['apps/server/launcher.mjs', '--json', '--data', data], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  return new Promise((resolve, reject) => {
    server.on('error', reject);
    server.stdout.once('data', async (line: Buffer) => {
      const { url } = JSON.parse(line.toString('utf8')) as { url: string };
      const answer = await fetch(`${url}/api/v1/health`);
      const took = (performance.now() - start) / 1000;
      server.once('exit', () => (answer.ok ? resolve(took) : reject(new Error(`Health answered ${answer.status}.`))));
      server.kill('SIGINT');
    });
  });
}
