import type { AddressInfo } from 'node:net';
import { createApp } from '../../../apps/server/src/app.ts';
import { createPool } from '../../../apps/server/src/platform/database/pool.ts';
import { createTestDatabase } from '../../api/support/database.ts';

/** A server that nobody has set up yet, with the built web app. */
export async function openEmptySite(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  const database = await createTestDatabase();
  const db = createPool(database.url, { size: 4, role: undefined });
  const app = await createApp({ db, version: 'test', clock: () => new Date(), warnings: [] });
  await app.listen({ port: 0, host: '127.0.0.1' });
  return {
    url: `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`,
    close: async () => {
      await app.close();
      await db.end();
      await database.drop();
    },
  };
}
