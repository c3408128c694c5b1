import { X509Certificate } from 'node:crypto';
import { statSync } from 'node:fs';
import type { RequestListener } from 'node:http';
import { createServer, type Server } from 'node:https';
import type { Settings } from '../config.ts';
import type { Log } from '../log.ts';
import { isPubliclyTrusted, readGivenCertificate } from './given-certificate.ts';
import type { TlsMaterial } from './make-certificates.ts';

/** What devices are asked to trust. */
export interface TrustedAuthority {
  /** the certificate in DER, as phones take it */
  readonly der: Buffer;
  /** SHA-256 of it, pairs of hexadecimal digits with colons */
  readonly fingerprint: string;
}

/** Where the server's certificate comes from; what renews it renews it in the servers that run. */
export interface TlsSource {
  readonly authority?: TrustedAuthority;
  readonly publiclyTrusted: boolean;
  readonly createServer: (handler: RequestListener) => Server;
  /** Looks whether there is a newer certificate; a bad one is warned of, and the present one stays. */
  readonly refresh: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

const LOOK_EVERY_MS = 60_000;

type Renewal = (now: Date) => Promise<TlsMaterial>;

function source(first: TlsMaterial, renewal: Renewal, log: Log, authority?: TrustedAuthority): TlsSource {
  let current = first;
  const servers = new Set<Server>();
  const refresh = async () => {
    try {
      const next = await renewal(new Date());
      if (next.cert === current.cert && next.key === current.key) return;
      for (const server of servers) server.setSecureContext(next);
      current = next;
      log.info('The new certificate is in use.');
    } catch (error) {
      log.warn(`The certificate was not renewed, the present one stays in use: ${(error as Error).message}`);
    }
  };
  const timer = setInterval(() => void refresh(), LOOK_EVERY_MS);
  timer.unref();
  return {
    ...(authority ? { authority } : {}),
    publiclyTrusted: !authority && isPubliclyTrusted(first),
    createServer: (handler) => {
      const server = createServer({ key: current.key, cert: current.cert }, handler);
      servers.add(server);
      server.on('close', () => servers.delete(server));
      return server;
    },
    refresh,
    stop: async () => clearInterval(timer),
  };
}

/**
 * The TLS that was asked for, or undefined for plain http.
 * @throws StartupError when the files given cannot be used, or the local authority cannot be kept
 */
export async function openTls(
  settings: Pick<Settings, 'tlsCert' | 'tlsKey' | 'tlsLocal' | 'tlsNames' | 'dataFolder'>,
  log: Log,
): Promise<TlsSource | undefined> {
  const { tlsCert, tlsKey, tlsLocal, tlsNames, dataFolder } = settings;
  if (tlsLocal) {
    // Only who asks for an authority waits for the library that makes it.
    const { openLocalAuthority } = await import('./local-authority.ts');
    const local = await openLocalAuthority(dataFolder, tlsNames, new Date(), log);
    const { raw: der, fingerprint256: fingerprint } = new X509Certificate(local.certificate);
    const first = await local.serverCertificate(new Date());
    return source(first, (now) => local.serverCertificate(now), log, { der, fingerprint });
  }
  if (tlsCert === undefined || tlsKey === undefined) return undefined;
  const first = readGivenCertificate(tlsCert, tlsKey, new Date(), log);
  let latest = first;
  let seen = '';
  return source(
    first,
    async (now) => {
      const stamped = [tlsCert, tlsKey].map((file) => statSync(file).mtimeMs).join();
      if (stamped !== seen) latest = readGivenCertificate(tlsCert, tlsKey, now, log);
      seen = stamped;
      return latest;
    },
    log,
  );
}
