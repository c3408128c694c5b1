import type { DemoAccount } from '../../../prisma/demo/people-and-tools.ts';
import { beyondThisMachine, webAddress } from './platform/listening-address.ts';
import { localNames } from './platform/tls/local-names.ts';

export interface Announcement {
  readonly url: string;
  readonly accounts: readonly DemoAccount[];
  /** the http address that only redirects */
  readonly redirectUrl?: string;
  /** the local authority: where devices learn to trust it, and what to compare */
  readonly authority?: { readonly page: string; readonly sha256: string };
}

/** Addresses by which other machines reach what listens everywhere. */
export function addressesElsewhere(host: string, url: string): readonly string[] {
  if (host !== '0.0.0.0' && host !== '::') return [];
  const { protocol, port } = new URL(url);
  const scheme = protocol === 'https:' ? 'https' : 'http';
  const { names, addresses } = localNames([]);
  return [...names, ...addresses]
    .filter(beyondThisMachine)
    .filter((name) => host === '::' || !name.includes(':'))
    .map((name) => webAddress(scheme, name, Number(port)));
}

/** Says on standard output that it runs: one line of JSON for programs, or a few for people. */
export function announce(json: boolean, said: Announcement, elsewhere: readonly string[]): void {
  const { url, accounts, redirectUrl, authority } = said;
  const lines = json
    ? [JSON.stringify({ url, accounts, redirectUrl, authority })]
    : [
        `Seatwell runs at ${url}  (Ctrl-C stops it)`,
        ...(elsewhere.length > 0 ? [`  From other machines: ${elsewhere.join('  ')}`] : []),
        ...(redirectUrl ? [`  ${redirectUrl} redirects there`] : []),
        ...(authority
          ? [`  Devices trust it once, as ${authority.page} tells; SHA-256 of the authority:`, `  ${authority.sha256}`]
          : []),
        ...accounts.map(({ role, email, password }) => `  ${role}: ${email}  ${password}`),
      ];
  process.stdout.write(`${lines.join('\n')}\n`);
}
