import { X509Certificate } from 'node:crypto';
import { type RequestOptions, request } from 'node:https';
import { connect, type PeerCertificate } from 'node:tls';

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

/** A device that trusts the given authority and nothing else; certificate errors reject. */
export class TrustingDevice {
  readonly #ca: string;

  constructor(authority: Buffer | string) {
    this.#ca = new X509Certificate(authority).toString();
  }

  /** The certificate that the server shows under a name, once the handshake has been verified. */
  handshake(url: string, name: string): Promise<PeerCertificate> {
    const { port } = new URL(url);
    const host = name.replace(/^\[|\]$/g, '');
    return new Promise((resolve, reject) => {
      // The name is what is verified; the connection goes to this machine whatever the name resolves to.
      const servername = /^[\d.]+$|:/.test(host) ? {} : { servername: host };
      const socket = connect({ port: Number(port), host: '127.0.0.1', ca: this.#ca, ...servername }, () => {
        const certificate = socket.getPeerCertificate();
        socket.end();
        resolve(certificate);
      });
      socket.once('error', reject);
    });
  }

  ask(url: string, options: RequestOptions & { readonly send?: object } = {}): Promise<Answer> {
    const { send, ...rest } = options;
    return new Promise((resolve, reject) => {
      const headers = { ...rest.headers, ...(send ? { 'content-type': 'application/json' } : {}) };
      const asked = request(url, { ...rest, headers, ca: this.#ca, agent: false }, (response) => {
        const parts: Buffer[] = [];
        response.on('data', (part: Buffer) => parts.push(part));
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }),
        );
      });
      asked.once('error', reject);
      asked.end(send ? JSON.stringify(send) : undefined);
    });
  }
}
