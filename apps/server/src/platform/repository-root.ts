import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { StartupError } from './startup-error.ts';

/**
 * The folder of the checkout, found upward from this file, so that it is the same from the sources (tests)
 * and from the bundle (apps/server/dist).
 * @throws StartupError when no folder above holds prisma/migrations
 */
export function repositoryRoot(): string {
  const start = dirname(fileURLToPath(import.meta.url));
  for (let folder = start; ; folder = dirname(folder)) {
    if (existsSync(join(folder, 'prisma', 'migrations'))) return folder;
    if (folder === dirname(folder)) break;
  }
  throw new StartupError(
    `No folder above ${start} holds prisma/migrations: the server runs from a checkout or image that keeps its layout.`,
  );
}
