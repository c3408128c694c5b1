import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { StartupError } from '../startup-error.ts';
import { dataFolderLayout } from './cluster.ts';
import { dataFolderHolder } from './data-folder-lock.ts';
import { pidFile } from './postmaster.ts';
import { socketFolder } from './socket-folder.ts';

export interface RunningPostgres {
  /** folder of the socket */
  readonly host: string;
  readonly password: string;
  /** removes what was needed to reach the socket; the server goes on */
  release(): void;
}

/**
 * The way to the PostgreSQL of a Seatwell that runs on this data folder now, for whoever may read the folder.
 * @returns undefined when none runs there
 * @throws StartupError while it is starting or stopping
 */
export function runningEmbeddedPostgres(folder: string): RunningPostgres | undefined {
  const dataFolder = resolve(folder);
  const holder = dataFolderHolder(dataFolder);
  if (holder === undefined) return undefined;
  const { cluster, password } = dataFolderLayout(dataFolder);
  if (pidFile(cluster)?.ready !== true)
    throw new StartupError(
      `The Seatwell on ${dataFolder} (process ${holder}) is starting or stopping: try again in a minute.`,
    );
  const socket = socketFolder(cluster);
  return { host: socket.folder, password: readFileSync(password, 'utf8').trim(), release: socket.remove };
}
