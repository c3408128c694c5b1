import { chmodSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { StartupError } from './startup-error.ts';

/**
 * Makes the data folder where it is missing, closed to everybody but this user.
 * @throws StartupError when it cannot be made, or holds things and others can enter it
 */
export function makePrivateFolder(dataFolder: string): void {
  try {
    mkdirSync(dataFolder, { recursive: true, mode: 0o700 });
  } catch (error) {
    throw new StartupError(
      `The data folder ${dataFolder} cannot be made (${(error as Error).message}): choose another with --data.`,
    );
  }
  const { uid, mode } = statSync(dataFolder);
  if (uid !== process.getuid?.() || (mode & 0o077) === 0) return;
  // A folder made for us beforehand is closed; one that holds things may be meant to be open.
  if (readdirSync(dataFolder).length === 0) {
    chmodSync(dataFolder, 0o700);
    return;
  }
  throw new StartupError(
    `Others can enter the data folder ${dataFolder} (mode ${(mode & 0o777).toString(8)}): close it with "chmod 700", or choose another with --data.`,
  );
}
