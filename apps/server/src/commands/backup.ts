import { existsSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { noteUpkeep } from '../features/operating/upkeep.ts';
import { fileIsThere, writeBackup } from '../platform/backup/write-backup.ts';
import { reachDatabase } from '../platform/database/reach.ts';
import { StartupError } from '../platform/startup-error.ts';
import { ownVersion, runCommand, withConnection } from './run-command.ts';

const usage = `npm run backup -- FILE [--data <folder>] [--json]

Writes the whole database to a new file, as one moment saw it; the server may run meanwhile. In an existing folder the
file is named after the moment. Without DATABASE_URL it is the embedded database of --data (SEATWELL_DATA, .seatwell).

The file holds names, e-mail addresses, password hashes, photos and the record: keep it like the database itself.`;

await runCommand(usage, async ({ file: asked, settings, log, answer }) => {
  if (asked === undefined) throw new StartupError(`Name the file to write.\n\n${usage}`);
  const startedAt = new Date();
  const file = fileFor(resolve(asked), startedAt);
  if (existsSync(file)) throw fileIsThere(file);
  const database = await reachDatabase(settings, log, false);
  try {
    const note = (outcome: 'ok' | 'failed', details: object) =>
      withConnection(database.url, (client) =>
        noteUpkeep(client, { kind: 'backup', outcome, startedAt, endedAt: new Date(), details }),
      ).catch((error: Error) => log.warn(`This backup could not be noted in the database: ${error.message}`));
    const written = await withConnection(database.url, (client) => writeBackup(client, file, ownVersion())).catch(
      async (error: Error) => {
        await note('failed', { file, findings: [error.message] });
        throw error;
      },
    );
    const { head, tables, heads } = written;
    const bytes = statSync(file).size;
    const rows = tables.reduce((sum, table) => sum + table.rows, 0);
    const events = tables.find(({ table }) => table === 'event')?.rows ?? 0;
    const details = { file, bytes, rows, events, takenAt: head.takenAt, heads };
    await note('ok', details);
    answer(
      [
        `${file}: ${rows} rows of ${tables.length} tables, ${events} events, ${Math.ceil(bytes / 1024)} kB.`,
        head.holds,
      ],
      { ...details, tables },
    );
  } finally {
    await database.close();
  }
});

/** In a folder, a name of its own for each moment. */
function fileFor(path: string, now: Date): string {
  if (!statSync(path, { throwIfNoEntry: false })?.isDirectory()) return path;
  return join(path, `seatwell-${now.toISOString().replaceAll(/[-:.]/g, '')}.backup`);
}
