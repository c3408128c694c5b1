import { Console } from 'node:console';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import pg from 'pg';
import { readSettings, type Settings } from '../platform/config.ts';
import { createLog, type Log } from '../platform/log.ts';
import { repositoryRoot } from '../platform/repository-root.ts';
import { StartupError } from '../platform/startup-error.ts';

export interface CommandLine {
  readonly file: string | undefined;
  readonly all: boolean;
  readonly once: boolean;
  readonly settings: Settings;
  readonly log: Log;
  /** the result: for people as lines, with --json as one line of JSON */
  readonly answer: (lines: readonly string[], json: object) => void;
}

/** Version of this Seatwell. */
export const ownVersion = (): string =>
  (JSON.parse(readFileSync(join(repositoryRoot(), 'package.json'), 'utf8')) as { version: string }).version;

/**
 * Runs a command of the terminal: parses its words, says what is wrong in one sentence, ends with 0 or 1. Ctrl-C ends
 * it at once; what was half done is undone by what did it.
 */
export async function runCommand(usage: string, work: (line: CommandLine) => Promise<void>): Promise<void> {
  process.umask(0o077);
  globalThis.console = new Console(process.stderr, process.stderr);
  for (const [name, code] of [
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)
    process.once(name, () => process.exit(code));
  // Whoever runs a command reads its answer, at a terminal or in a mail of cron.
  const log = createLog(undefined, true);
  try {
    const { values, positionals } = parseWords(usage);
    if (values.help) {
      process.stdout.write(`${usage}\n`);
      process.exit(0);
    }
    if (positionals.length > 1) throw new StartupError(`One file at a time.\n\n${usage}`);
    const given = (['data', 'record-key'] as const).flatMap((name) => {
      const value = values[name];
      return value === undefined ? [] : [`--${name}`, value];
    });
    const settings = readSettings(given, process.env);
    const answer = (lines: readonly string[], json: object) =>
      process.stdout.write(values.json ? `${JSON.stringify(json)}\n` : `${lines.join('\n')}\n`);
    await work({ file: positionals[0], all: values.all ?? false, once: values.once ?? false, settings, log, answer });
    process.exit(process.exitCode ?? 0);
  } catch (error) {
    log.error(error instanceof StartupError ? error.message : ((error as Error).stack ?? String(error)));
    process.exit(1);
  }
}

function parseWords(usage: string) {
  try {
    return parseArgs({
      args: process.argv.slice(2),
      options: {
        json: { type: 'boolean' },
        help: { type: 'boolean' },
        all: { type: 'boolean' },
        once: { type: 'boolean' },
        data: { type: 'string' },
        'record-key': { type: 'string' },
      },
      strict: true,
      allowPositionals: true,
    });
  } catch (error) {
    throw new StartupError(`${(error as Error).message}\n\n${usage}`);
  }
}

/** A connection of the command's own, closed after the work. */
export async function withConnection<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url, application_name: 'seatwell upkeep' });
  client.on('error', () => {});
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end().catch(() => undefined);
  }
}
