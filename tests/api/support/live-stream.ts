import { get } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect } from 'vitest';
import type { Plant, SignedIn } from './plant.ts';

/** What a live stream has said so far. */
export interface Live {
  heads(): { version: number; root: string }[];
  until(what: () => boolean): Promise<void>;
  readonly ended: Promise<void>;
  close(): void;
}

/** Opens a stream of live updates. */
export async function listen(plant: Plant, who: SignedIn, path: string): Promise<Live> {
  const { port } = plant.app.server.address() as AddressInfo;
  const cookie = who.agent.jar
    .getCookies({ domain: '127.0.0.1', path: '/', secure: false, script: false })
    .toValueString();
  return listenAt(port, cookie, path);
}

/** Opens a stream of live updates at a port of this machine, with a session's cookie. */
export async function listenAt(port: number, cookie: string, path: string): Promise<Live> {
  let text = '';
  let changed = () => {};
  const { response, request } = await new Promise<{
    response: import('node:http').IncomingMessage;
    request: import('node:http').ClientRequest;
  }>((resolve, reject) => {
    const request = get({ host: '127.0.0.1', port, path, headers: { cookie } }, (response) =>
      resolve({ response, request }),
    );
    request.on('error', reject);
  });
  expect(response.statusCode).toBe(200);
  expect(response.headers['content-type']).toMatch(/^text\/event-stream/);
  response.setEncoding('utf8');
  response.on('data', (chunk: string) => {
    text += chunk;
    changed();
  });
  request.on('error', () => {});
  return {
    heads: () => [...text.matchAll(/^data: (.*)$/gm)].map((match) => JSON.parse(match[1] ?? '')),
    until: (what) =>
      new Promise((resolve) => {
        changed = () => {
          if (what()) resolve();
        };
        changed();
      }),
    ended: new Promise((resolve) => response.once('close', () => resolve())),
    close: () => request.destroy(),
  };
}
