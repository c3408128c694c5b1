import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { StartupError } from '../startup-error.ts';
import type { TrustedAuthority } from './tls-source.ts';
import { AUTHORITY_FILE, authorityFile, TRUST_PAGE, trustPage } from './trust-page/trust-page.ts';

export interface RedirectServer {
  readonly port: number;
  readonly close: () => Promise<void>;
}

/** A name or an address as a Host header may hold it, with or without a port; nothing else is put into a Location. */
const HOST = /^([a-z0-9.-]+|\[[0-9a-f:.]+\])(:\d{1,5})?$/i;

/**
 * Answers plain http with the https address (308, so that nothing is lost of what was asked) and, with a local
 * authority, with the page and the certificate that a device needs before it can use https. Nothing else.
 * @throws StartupError when the port cannot be had
 */
export async function startRedirectServer(where: {
  readonly host: string;
  readonly port: number;
  readonly httpsPort: number;
  readonly authority?: TrustedAuthority | undefined;
}): Promise<RedirectServer> {
  const { host, port, httpsPort, authority } = where;
  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    const name = HOST.exec(request.headers.host ?? '')?.[1];
    const path = request.url ?? '/';
    if (name === undefined || !path.startsWith('/')) {
      response.writeHead(400).end();
      return;
    }
    const origin = `https://${name}${httpsPort === 443 ? '' : `:${httpsPort}`}`;
    const page = path.split('?')[0];
    if (authority && request.method === 'GET' && (page === TRUST_PAGE || page === AUTHORITY_FILE)) {
      const { headers, body } =
        page === TRUST_PAGE
          ? trustPage(authority, origin, request.headers['accept-language'])
          : authorityFile(authority);
      response.writeHead(200, headers).end(body);
      return;
    }
    response.writeHead(308, { location: `${origin}${path}`, 'cache-control': 'no-store', connection: 'close' }).end();
  };
  const server = createServer(answer);
  await listening(server, host, port);
  return {
    port: (server.address() as AddressInfo).port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function listening(server: Server, host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(
        new StartupError(
          `The redirecting port ${port} on ${host} cannot be had (${error.message}): choose another with --redirect-port, or leave it out.`,
        ),
      ),
    );
    server.listen(port, host, resolve);
  });
}
