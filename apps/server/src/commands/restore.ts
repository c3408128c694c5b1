import { resolve } from 'node:path';
import { requeueJobs } from '../features/operating/requeue-jobs.ts';
import { restoreBackup } from '../features/operating/restore-backup.ts';
import { noteUpkeep } from '../features/operating/upkeep.ts';
import { reachDatabase } from '../platform/database/reach.ts';
import { prepareRoles } from '../platform/database/roles.ts';
import { prepareQueue } from '../platform/jobs/queue.ts';
import { StartupError } from '../platform/startup-error.ts';
import { runCommand, withConnection } from './run-command.ts';

const usage = `npm run restore -- FILE [--data <folder>] [--json]

Brings a backup into an empty database, migrates it to this version and verifies it; whatever goes wrong, nothing is
changed. Stop the server first. Without DATABASE_URL it is the embedded database of --data (SEATWELL_DATA, .seatwell),
which is made where there is none. Everybody signs in anew.`;

await runCommand(usage, async ({ file: asked, settings, log, answer }) => {
  if (asked === undefined) throw new StartupError(`Name the file to restore.\n\n${usage}`);
  const file = resolve(asked);
  const startedAt = new Date();
  const database = await reachDatabase(settings, log, true);
  try {
    if (database.inService)
      throw new StartupError(
        `A Seatwell runs on ${settings.dataFolder}: stop it first, or restore into another folder with --data.`,
      );
    const { head, tables, verified, migratedForward } = await withConnection(database.url, (client) =>
      restoreBackup(client, file),
    );
    const rows = tables.reduce((sum, table) => sum + table.rows, 0);
    const details = { file, takenAt: head.takenAt, from: head.seatwell, rowsInAll: rows, migratedForward, ...verified };
    const jobs = await withConnection(database.url, async (client) => {
      const { appRole } = await prepareRoles(client);
      await prepareQueue(database.url, appRole);
      await noteUpkeep(client, { kind: 'restore', outcome: 'ok', startedAt, endedAt: new Date(), details });
      return requeueJobs(client);
    });
    answer(
      [
        `${file} of ${head.takenAt} is restored: ${rows} rows of ${tables.length} tables.`,
        `Verified: ${verified.events} events in ${verified.streams} streams give the heads on record, ${verified.jointsFolded} joints drawn at random fold to what the register shows.`,
        ...(migratedForward.length > 0 ? [`Migrated forward: ${migratedForward.join(', ')}.`] : []),
        ...(jobs > 0 ? [`${jobs} jobs that had not ended are queued again.`] : []),
      ],
      { ...details, tables, jobs },
    );
  } finally {
    await database.close();
  }
});
