import type { AddressInfo } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import type { FastifyInstance } from 'fastify';
import { webAddress } from './listening-address.ts';
import { StartupError } from './startup-error.ts';

const usualPort = 4310;
const portsTried = 50;
const drainLimit_ms = 30_000;

/**
 * Listens on the port asked for, or on the usual one or the next that is free.
 * @returns the address to open in a browser
 * @throws StartupError when the port asked for is busy or not allowed, or none is free
 */
export async function listen(
  app: FastifyInstance,
  where: { readonly host: string; readonly port?: number | undefined; readonly scheme?: 'http' | 'https' },
): Promise<string> {
  const { host } = where;
  const first = where.port ?? usualPort;
  const last = where.port === undefined ? first + portsTried - 1 : first;
  for (let port = first; port <= last; port += 1) {
    try {
      await app.listen({ host, port });
      return webAddress(where.scheme ?? 'http', host, (app.server.address() as AddressInfo).port);
    } catch (error) {
      const { code, message } = error as NodeJS.ErrnoException;
      if (code === 'EADDRINUSE' && port < last) continue;
      if (code === 'EADDRINUSE' && where.port !== undefined) {
        throw new StartupError(
          `Port ${port} on ${host} is in use by another program: stop that one, choose another with --port, or leave --port out to take the next free one.`,
        );
      }
      if (code === 'EADDRINUSE') {
        throw new StartupError(`Ports ${first} to ${last} on ${host} are all in use: choose one with --port.`);
      }
      throw new StartupError(
        `The server cannot listen on ${host}, port ${port} (${message}): choose others with --host and --port.`,
      );
    }
  }
  throw new Error('no port was tried');
}

/**
 * Takes no more requests, lets those under way finish, and cuts off what lasts longer than 30 seconds.
 * @param answering_s goes on answering for so long before, while health already says that it is draining
 */
export async function drain(app: FastifyInstance, answering_s = 0): Promise<void> {
  if (answering_s > 0) await wait(answering_s * 1000);
  const limit = setTimeout(() => {
    app.log.warn('Requests under way for more than 30 s are cut off.');
    app.server.closeAllConnections();
  }, drainLimit_ms);
  await app.close();
  clearTimeout(limit);
}
