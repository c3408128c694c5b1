import { isIP } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';

/** What a certificate vouches for. */
export interface CertificateNames {
  readonly names: readonly string[];
  readonly addresses: readonly string[];
}

/** Ranges in which an authority of our own may vouch for any address: none of them is on the public internet. */
export const PRIVATE_RANGES = [
  '127.0.0.0/8',
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '169.254.0.0/16',
  '100.64.0.0/10',
  '::1/128',
  'fc00::/7',
] as const;

/** A host name as certificates may carry it; others (an underscore, a blank) are left out. */
const HOST_NAME = /^(?=.{1,253}$)[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?(\.[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?)*$/;

export const isHostName = (text: string): boolean => isIP(text) === 0 && HOST_NAME.test(text);

/** The names and addresses by which this machine is reached, with those that were asked for. */
export function localNames(asked: readonly string[]): CertificateNames {
  const host = hostname().toLowerCase();
  const wanted = asked.map((name) => name.toLowerCase());
  const names = ['localhost', host, ...(host.includes('.') ? [] : [`${host}.local`]), ...wanted].filter(isHostName);
  const interfaces = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  const addresses = ['127.0.0.1', '::1', ...interfaces.map(({ address }) => address), ...wanted]
    // No browser can write a link-local address, which needs its zone; a mapped one is that of version 4.
    .filter((address) => isIP(address) !== 0 && !/^fe80:|^::ffff:/.test(address));
  return {
    names: [...new Set(names)],
    addresses: [...new Set(addresses)],
  };
}
