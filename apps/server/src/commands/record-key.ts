import { reachDatabase } from '../platform/database/reach.ts';
import { changeKey } from '../platform/record-key/change-key.ts';
import { keyFileOf } from '../platform/record-key/key-file.ts';
import { type KnownKey, knownKeys } from '../platform/record-key/known-keys.ts';
import { StartupError } from '../platform/startup-error.ts';
import { runCommand, withConnection } from './run-command.ts';

const usage = `npm run record-key -- [change] [--record-key <file>] [--data <folder>] [--json]

Shows the public keys that signed heads of this database's record, the one that signs now last. "change" makes another
key sign from now on; those before it stay known, and what they signed still verifies. With a file of your own
(--record-key, SEATWELL_RECORD_KEY) put the new key there first; the one in the data folder is made anew by this
command. The server may run meanwhile and takes the new key by itself. Tell its fingerprint to whoever keeps heads.`;

const shown = (keys: readonly KnownKey[]): string[] =>
  keys.length === 0
    ? ['No key has signed yet: the server makes or takes the first one when the site is there.']
    : keys.map(
        ({ fingerprint, since }, index) =>
          `${fingerprint}  since ${since.toISOString()}${index === keys.length - 1 ? ', signs now' : ''}`,
      );

await runCommand(usage, async ({ file: word, settings, log, answer }) => {
  if (word !== undefined && word !== 'change') throw new StartupError(`“${word}” is not known here.\n\n${usage}`);
  const database = await reachDatabase(settings, log, false);
  try {
    const keys = await withConnection(database.url, async (client) => {
      if (word === 'change') await changeKey(client, keyFileOf(settings), new Date());
      return knownKeys(client);
    });
    answer(shown(keys), { keys });
  } finally {
    await database.close();
  }
});
