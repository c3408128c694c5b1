import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import {
  type EmbeddedPostgres,
  startEmbeddedPostgres,
} from '../../../apps/server/src/platform/embedded-postgres/index.ts';
import { createLog } from '../../../apps/server/src/platform/log.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Connects as the superuser of the run's own PostgreSQL server. */
    postgres: string;
  }
}

/**
 * One PostgreSQL server of the tests' own in a temporary folder, independent of any that runs beside it.
 * `stop` removes the folder with it.
 */
export async function startTestPostgres(): Promise<EmbeddedPostgres> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'seatwell-test-'));
  const warnings = createLog((line) => process.stderr.write(line), true);
  const server = await startEmbeddedPostgres({
    dataFolder,
    log: { ...warnings, info: () => undefined },
  });
  return {
    ...server,
    stop: async () => {
      await server.stop();
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

/** Vitest's global set-up: one server for the run, its address provided as `postgres`. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startTestPostgres();
  project.provide('postgres', server.superuserUrl);
  return () => server.stop();
}
