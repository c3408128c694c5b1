import { resolve } from 'node:path';
import { requeueJobs } from '../features/operating/requeue-jobs.ts';
import { restoreBackup } from '../features/operating/restore-backup.ts';
import { noteUpkeep } from '../features/operating/upkeep.ts';
import { reachDatabase } from '../platform/database/reach.ts';
import { prepareRoles } from '../platform/database/roles.ts';
import { prepareQueue } from '../platform/jobs/queue.ts';
import { HeadSigner } from '../platform/record-key/head-signer.ts';
import { keyFileOf } from '../platform/record-key/key-file.ts';
import { knownKeys } from '../platform/record-key/known-keys.ts';
import { StartupError } from '../platform/startup-error.ts';
import { runCommand, withConnection } from './run-command.ts';

const usage = `npm run restore -- FILE [--data <folder>] [--json]

Brings a backup into an empty database, migrates it to this version and verifies it; whatever goes wrong, nothing is
changed. Stop the server first. Without DATABASE_URL it is the embedded database of --data (SEATWELL_DATA, .seatwell),
which is made where there is none. Everybody signs in anew. The key that signs heads of the record is not in a backup:
bring its file (record-key.pem of the data folder, or --record-key), or change the key with "npm run record-key".`;

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
    const unsigned = await withConnection(database.url, async (client) => {
      const current = (await knownKeys(client)).at(-1);
      // A database that knows no key makes its first one when the server starts.
      if (!current) return [];
      const keyFile = keyFileOf(settings);
      return keyFile
        ? new HeadSigner(client, keyFile, () => new Date()).warnings()
        : [
            `The key that signs heads of the record, ${current.fingerprint}, is not in a backup: name its file to every server with --record-key (SEATWELL_RECORD_KEY), or, where it is lost, change it with “npm run record-key -- change”.`,
          ];
    });
    answer(
      [
        `${file} of ${head.takenAt} is restored: ${rows} rows of ${tables.length} tables.`,
        `Verified: ${verified.events} events in ${verified.streams} streams give the heads on record, ${verified.jointsFolded} joints drawn at random fold to what the register shows.`,
        ...(migratedForward.length > 0 ? [`Migrated forward: ${migratedForward.join(', ')}.`] : []),
        ...(jobs > 0 ? [`${jobs} jobs that had not ended are queued again.`] : []),
        ...unsigned,
      ],
      // What to do about the key that signs heads of the record; null where it is there.
      { ...details, tables, jobs, recordKey: unsigned[0] ?? null },
    );
  } finally {
    await database.close();
  }
});
