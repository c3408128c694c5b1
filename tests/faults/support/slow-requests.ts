import { connect } from 'node:net';

/** A request whose answer is awaited on a connection of its own. */
export interface OpenRequest {
  /** Status once answered; rejects when the connection is cut. */
  readonly answer: Promise<number>;
  answered(): boolean;
}

/** Sends a GET on a new connection and resolves when its bytes have left. */
export async function openRequest(url: string): Promise<OpenRequest> {
  const { hostname, port, pathname } = new URL(url);
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
    socket.write(`GET ${pathname} HTTP/1.1\r\nHost: ${hostname}:${port}\r\nConnection: close\r\n\r\n`, () => resolve());
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
