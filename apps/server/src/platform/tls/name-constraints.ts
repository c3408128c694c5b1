import { BlockList, isIP, SocketAddress } from 'node:net';
import { type CertificateNames, PRIVATE_RANGES } from './local-names.ts';

export const NAME_CONSTRAINTS = '2.5.29.30';

const SEQUENCE = 0x30;
/** tags of RFC 5280: permittedSubtrees [0] of NameConstraints; dNSName [2] and iPAddress [7] of GeneralName */
const PERMITTED = 0xa0;
const DNS_NAME = 0x82;
const IP_ADDRESS = 0x87;

function tagged(tag: number, content: Buffer): Buffer {
  const { length } = content;
  if (length < 0x80) return Buffer.concat([Buffer.of(tag, length), content]);
  if (length < 0x100) return Buffer.concat([Buffer.of(tag, 0x81, length), content]);
  return Buffer.concat([Buffer.of(tag, 0x82, length >> 8, length & 0xff), content]);
}

/** The bytes of an address: 4 or 16. */
function addressBytes(address: string): Buffer {
  if (isIP(address) === 4) return Buffer.from(address.split('.').map(Number));
  const [head = '', tail = ''] = address.split('::');
  const groups = (text: string) => text.split(':').filter(Boolean);
  const missing = 8 - groups(head).length - groups(tail).length;
  const all = [...groups(head), ...Array.from({ length: missing }, () => '0'), ...groups(tail)];
  return Buffer.from(all.map((group) => group.padStart(4, '0')).join(''), 'hex');
}

function rangeBytes(range: string): Buffer {
  const [address = '', bits = ''] = range.split('/');
  const bytes = addressBytes(address);
  const mask = Buffer.from(
    bytes.map((_, index) => 0xff & ~(0xff >> Math.min(8, Math.max(0, Number(bits) - 8 * index)))),
  );
  return Buffer.concat([bytes, mask]);
}

const single = (address: string): string => `${address}/${isIP(address) === 4 ? 32 : 128}`;

const isPrivate = (address: string): boolean => mayVouchFor({ names: [], addresses: [] }, address);

/**
 * The extension that keeps an authority to what it was made for (RFC 5280, 4.2.1.10): whoever steals its key can
 * pose as this machine, but not as anything else that the phones visit.
 * @returns its value in DER
 */
export function nameConstraints({ names, addresses }: CertificateNames): Uint8Array<ArrayBuffer> {
  const ranges = [...PRIVATE_RANGES, ...addresses.filter((address) => !isPrivate(address)).map(single)];
  const subtrees = [
    ...names.map((name) => tagged(DNS_NAME, Buffer.from(name, 'ascii'))),
    ...ranges.map((range) => tagged(IP_ADDRESS, rangeBytes(range))),
  ].map((name) => tagged(SEQUENCE, name));
  return Uint8Array.from(tagged(SEQUENCE, tagged(PERMITTED, Buffer.concat(subtrees))));
}

/** Whether an authority with these constraints may vouch for the name or address. */
export function mayVouchFor(permitted: CertificateNames, name: string): boolean {
  const family = isIP(name);
  if (family === 0) return permitted.names.some((allowed) => name === allowed || name.endsWith(`.${allowed}`));
  const list = new BlockList();
  for (const range of [...PRIVATE_RANGES, ...permitted.addresses.map(single)]) {
    const [address = '', bits = ''] = range.split('/');
    list.addSubnet(address, Number(bits), isIP(address) === 4 ? 'ipv4' : 'ipv6');
  }
  return list.check(new SocketAddress({ address: name, family: family === 4 ? 'ipv4' : 'ipv6' }));
}
