import { StartupError } from '../startup-error.ts';
import { type KeyFile, makeItBy, makeKeyFile, readKeyFile } from './key-file.ts';
import { knownKeys, type Queryable, rememberNextKey } from './known-keys.ts';

/**
 * Makes the key of the file the one that signs from now on. A key that this database does not know yet is taken as it is:
 * who names a file puts the new key there first. Otherwise the one in the data folder is made anew, and the private part
 * of the old one is gone; should the database fail just then, doing it again takes the new one.
 * @throws StartupError where there is no file, or the key that was named signs already or signed before
 */
export async function changeKey(db: Queryable, file: KeyFile | undefined, at: Date): Promise<void> {
  if (!file)
    throw new StartupError(
      `No key is named: make one with "${makeItBy('FILE')}", and name it with --record-key (SEATWELL_RECORD_KEY), here and for the server.`,
    );
  const known = await knownKeys(db);
  const present = readKeyFile(file);
  if (present && !known.some(({ fingerprint }) => fingerprint === present.fingerprint)) {
    await rememberNextKey(db, present, at);
    return;
  }
  if (file.given)
    throw new StartupError(
      `The key in ${file.path} (${present?.fingerprint}) signs already, or signed before and was replaced: put a new one there first, "${makeItBy(file.path)}", and run this again.`,
    );
  await rememberNextKey(db, makeKeyFile(file, 'replace'), at);
}
