import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { Log } from '../platform/log.ts';
import { repositoryRoot } from '../platform/repository-root.ts';
import { StartupError } from '../platform/startup-error.ts';
import { beyondKept, nextRun } from './nightly-plan.ts';
import { runCommand } from './run-command.ts';

const usage = `npm run nightly -- FOLDER [--once]

Every night at SEATWELL_BACKUP_AT (UTC, 02:00 unless given) writes a backup into the folder, verifies the file and the
database, and keeps the newest SEATWELL_BACKUPS_KEPT (14) that verified. Older ones are removed only after that. With
--once it does so now and ends, with 1 when anything is wrong: for a scheduler of your own.`;

/** Runs one of our commands in a process of its own, as a person would; its last line of JSON, or null when it failed. */
function ours(words: readonly string[]): Promise<Record<string, unknown> | null> {
  const launcher = join(repositoryRoot(), 'apps', 'server', 'launcher.mjs');
  const child = spawn(process.execPath, [launcher, ...words, '--json'], { stdio: ['ignore', 'pipe', 'inherit'] });
  let output = '';
  child.stdout.on('data', (part) => {
    output += part;
  });
  return new Promise((resolve) => {
    child.once('error', () => resolve(null));
    child.once('close', (code) => resolve(code === 0 ? (JSON.parse(output) as Record<string, unknown>) : null));
  });
}

/** Backup, verification of file and database, then the old ones go. @returns whether all of it went well */
async function night(folder: string, kept: number, data: readonly string[], log: Log): Promise<boolean> {
  const written = await ours(['backup', folder, ...data]);
  const file = typeof written?.['file'] === 'string' ? written['file'] : null;
  if (file === null) {
    log.error('No backup was written; the older ones stay.');
    return false;
  }
  if (!(await ours(['verify', file]))) {
    log.error(`The backup ${file} does not verify; the older ones stay.`);
    return false;
  }
  for (const name of beyondKept(readdirSync(folder), kept)) rmSync(join(folder, name));
  log.info(`Backed up to ${file} and verified it.`);
  if (await ours(['verify', ...data])) return true;
  log.error('The database does not verify: keep the last backups, and look at what the verification says above.');
  return false;
}

await runCommand(usage, async ({ file: asked, once, settings, log }) => {
  if (asked === undefined) throw new StartupError(`Name the folder for the backups.\n\n${usage}`);
  const folder = resolve(asked);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const data = settings.databaseUrl === undefined ? ['--data', settings.dataFolder] : [];
  if (once) {
    if (!(await night(folder, settings.backupsKept, data, log))) process.exitCode = 1;
    return;
  }
  for (;;) {
    const next = nextRun(new Date(), settings.backupAt);
    log.info(`The next backup is at ${next.toISOString()}.`);
    // In short steps, so that a clock that is put right is followed.
    while (new Date() < next) await wait(Math.min(30_000, next.getTime() - Date.now()));
    await night(folder, settings.backupsKept, data, log);
  }
});
