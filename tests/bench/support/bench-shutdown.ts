import { Agent, request } from 'node:http';
import { createTestDatabase } from '../../api/support/database.ts';
import { startTestPostgres } from '../../api/support/database-server.ts';
import { openShutdownOn, type Shutdown } from '../../api/support/shutdown.ts';

export interface BenchShutdown {
  readonly shutdown: Shutdown;
  readonly url: string;
  readonly databaseUrl: string;
  /** the signed-in coordinator's cookie */
  readonly cookie: string;
  close(): Promise<void>;
}

/** A shutdown in progress on a PostgreSQL of its own, its server listening on a loopback port. */
export async function openBenchShutdown(): Promise<BenchShutdown> {
  const server = await startTestPostgres();
  const database = await createTestDatabase(server.superuserUrl);
  const shutdown = await openShutdownOn(database);
  const address = shutdown.plant.app.server.address();
  if (!address || typeof address === 'string') throw new Error('The bench server listens on no port.');
  const url = `http://127.0.0.1:${address.port}`;
  const answer = await fetch(`${url}/api/v1/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ email: shutdown.coordinator.email, password: 'a long test secret' }),
  });
  const cookie = answer.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  return {
    shutdown,
    url,
    databaseUrl: database.url,
    cookie,
    close: async () => {
      await shutdown.close();
      await server.stop();
    },
  };
}

const agent = new Agent({ keepAlive: true, maxSockets: 400 });

/** One request over a kept-alive connection; answers the body. @throws Error for any status but 200 */
export const send = (url: string, cookie: string, method: string, body?: unknown): Promise<string> =>
  new Promise((resolve, reject) => {
    const text = body === undefined ? '' : JSON.stringify(body);
    const headers = { cookie, 'content-type': 'application/json', 'content-length': Buffer.byteLength(text) };
    const call = request(url, { method, agent, headers }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () => {
        const answer = Buffer.concat(parts).toString('utf8');
        if (response.statusCode === 200) resolve(answer);
        else reject(new Error(`${response.statusCode}: ${answer.slice(0, 600)}`));
      });
    });
    call.on('error', reject);
    call.end(text);
  });
