import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { TestProject } from 'vitest/node';
import { type LaunchedServer, launchServer } from './launched-server.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address that starts the demo server when it is first asked, and answers where it is and who may sign in. */
    demo: string;
  }
}

/**
 * Vitest's global set-up: one demo server for all browser tests of a run. It is started by the first test file
 * that asks, since not every file needs it, and stopped at the end.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  let demo: Promise<LaunchedServer> | undefined;
  const starter = createServer((_request, response) => {
    demo ??= launchServer(['--demo']);
    demo.then(
      ({ url, accounts }) => response.end(JSON.stringify({ url, accounts })),
      (error: unknown) => response.writeHead(500).end(String(error)),
    );
  });
  await new Promise<void>((resolve) => {
    starter.listen(0, '127.0.0.1', resolve);
  });
  project.provide('demo', `http://127.0.0.1:${(starter.address() as AddressInfo).port}`);
  return async () => {
    starter.closeAllConnections();
    starter.close();
    // One that did not start has cleaned up behind itself.
    const started = await demo?.catch(() => undefined);
    await started?.stop();
  };
}
