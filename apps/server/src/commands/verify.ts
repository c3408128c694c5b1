import { resolve } from 'node:path';
import { noteUpkeep } from '../features/operating/upkeep.ts';
import type { Verified } from '../features/operating/verify/record-verifier.ts';
import { verifyDatabase, verifyFile } from '../features/operating/verify/verify-sources.ts';
import { reachDatabase } from '../platform/database/reach.ts';
import { runCommand, withConnection } from './run-command.ts';

const usage = `npm run verify -- [FILE] [--all] [--data <folder>] [--json]

Verifies the database, or a backup without any database: recomputes the head of every stream from the stored bytes,
holds every event's columns against its bytes, names against their commitments, files against their hashes, and folds
200 joints drawn at random (--all: every joint) to compare them with the register. Ends with 1 when anything is wrong.
The server may run meanwhile; run it every night. Without DATABASE_URL it is the embedded database of --data.`;

const linesOf = (what: string, verified: Verified): string[] => [
  `${what}: ${verified.events} events in ${verified.streams} streams, ${verified.rows} rows of lists, ${verified.jointsFolded} joints folded anew, ${verified.names} names, ${verified.files} files.`,
  ...(verified.problems === 0
    ? ['Nothing is wrong.']
    : [`${verified.problems} things are wrong:`, ...verified.findings]),
];

await runCommand(usage, async ({ file, all, settings, log, answer }) => {
  if (file !== undefined) {
    const { backup, ...verified } = await verifyFile(resolve(file), all);
    if (verified.problems > 0) process.exitCode = 1;
    const { head, tables, heads } = backup;
    answer(linesOf(`${file} of ${head.takenAt}`, verified), {
      file,
      takenAt: head.takenAt,
      ...verified,
      tables,
      heads,
    });
    return;
  }
  const startedAt = new Date();
  const database = await reachDatabase(settings, log, false);
  try {
    const verified = await withConnection(database.url, (client) => verifyDatabase(client, all));
    const outcome = verified.problems === 0 ? 'ok' : 'failed';
    if (outcome === 'failed') process.exitCode = 1;
    await withConnection(database.url, (client) =>
      noteUpkeep(client, { kind: 'verification', outcome, startedAt, endedAt: new Date(), details: verified }),
    ).catch((error: Error) => log.warn(`The result could not be noted in the database: ${error.message}`));
    answer(linesOf('The database', verified), verified);
  } finally {
    await database.close();
  }
});
