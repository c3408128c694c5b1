import { isIP } from 'node:net';

/** Whether listening on this address can be reached from other machines; a name but localhost counts as such. */
export function beyondThisMachine(host: string): boolean {
  if (host === 'localhost' || host === '::1') return false;
  return !(isIP(host) === 4 && host.startsWith('127.'));
}

/** The address to open in a browser; what listens everywhere is reached as localhost. */
export function webAddress(scheme: 'http' | 'https', host: string, port: number): string {
  const name = host === '0.0.0.0' || host === '::' ? 'localhost' : host;
  return `${scheme}://${name.includes(':') ? `[${name}]` : name}:${port}`;
}

/** What is said where plain http can be reached from other machines. */
export const plainHttpWarning = (host: string): string =>
  `Plain http can be reached from other machines (${host}): passwords cross the network readable unless a proxy on the same private network brings TLS, and browsers refuse the session. Remedy: --tls-local, or --tls-cert and --tls-key.`;
