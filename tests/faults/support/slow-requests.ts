import { connect } from 'node:net';

/** A request whose answer is awaited on a connection of its own. */
export interface OpenRequest {
  /** Status once answered; rejects when the connection is cut. */
  readonly answer: Promise<number>;
  answered(): boolean;
}

/** What is posted, by whom. */
export interface Posted {
  readonly cookie: string;
  readonly body: string;
}

function bytesOf(url: string, posted: Posted | undefined): string {
  const { host, pathname } = new URL(url);
  if (!posted) return `GET ${pathname} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`;
  return [
    `POST ${pathname} HTTP/1.1`,
    `Host: ${host}`,
    `Cookie: ${posted.cookie}`,
    'Content-Type: application/json',
    `Content-Length: ${Buffer.byteLength(posted.body)}`,
    'Connection: close',
    '',
    posted.body,
  ].join('\r\n');
}

/** Sends a GET (or what is posted) on a new connection and resolves when its bytes have left. */
export async function openRequest(url: string, posted?: Posted): Promise<OpenRequest> {
  const { hostname, port } = new URL(url);
  const socket = connect(Number(port), hostname);
  let received = '';
  const answer = new Promise<number>((resolve, reject) => {
    socket.on('data', (chunk) => {
      received += chunk;
      const status = /^HTTP\/1\.1 (\d{3}) /.exec(received)?.[1];
      if (status !== undefined) resolve(Number(status));
    });
    socket.on('error', reject);
    socket.on('close', () => reject(new Error('the connection was cut before an answer')));
  });
  // Whoever awaits it later still learns of a rejection; until then it is not an unhandled one.
  answer.catch(() => undefined);
  await new Promise<void>((resolve, reject) => {
    socket.once('error', reject);
    socket.write(bytesOf(url, posted), () => resolve());
  });
  return { answer, answered: () => received !== '' };
}

/** Resolves when the server takes no new connections. */
export async function refusesConnections(url: string): Promise<void> {
  const { hostname, port } = new URL(url);
  for (;;) {
    const refused = await new Promise<boolean>((resolve) => {
      const socket = connect(Number(port), hostname);
      socket.once('connect', () => {
        socket.destroy();
        resolve(false);
      });
      socket.once('error', () => resolve(true));
    });
    if (refused) return;
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
