import { Console } from 'node:console';
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { openDemo } from '../../../prisma/demo/open-demo.ts';
import { addressesElsewhere, announce } from './announce.ts';
import { createApp } from './app.ts';
import { jobKinds } from './job-kinds.ts';
import { readSettings, usage } from './platform/config.ts';
import { openDatabase } from './platform/database/open.ts';
import { createPool, type Database } from './platform/database/pool.ts';
import { prepareDatabase } from './platform/database/prepare.ts';
import { drain, listen } from './platform/http-server.ts';
import { runQueue } from './platform/jobs/queue.ts';
import { createLifecycle } from './platform/lifecycle.ts';
import { beyondThisMachine, plainHttpWarning, webAddress } from './platform/listening-address.ts';
import { createLog } from './platform/log.ts';
import { HeadSigner } from './platform/record-key/head-signer.ts';
import { keyFileOf, readKeyFile } from './platform/record-key/key-file.ts';
import { repositoryRoot } from './platform/repository-root.ts';
import { startRedirectServer } from './platform/tls/redirect-server.ts';
import { openTls } from './platform/tls/tls-source.ts';
import { TRUST_PAGE } from './platform/tls/trust-page/trust-page.ts';

/** Short enough to leave https again within a month, where a certificate is not renewed. */
const PUBLIC_HSTS_DAYS = 30;

// Whatever the process writes (data, password, certificates) is its user's alone.
process.umask(0o077);
// Standard output is for announce alone: what packages print goes to standard error.
globalThis.console = new Console(process.stderr, process.stderr);

const log = createLog();
const lifecycle = createLifecycle(log);

await lifecycle.start(async () => {
  const settings = readSettings(process.argv.slice(2), process.env);
  if (settings.help) {
    process.stdout.write(`${usage}\n`);
    return;
  }
  const tls = await openTls(settings, log);
  if (tls) lifecycle.onStop('TLS', tls.stop);
  const exposed = !tls && beyondThisMachine(settings.host) ? [plainHttpWarning(settings.host)] : [];
  const keyFile = keyFileOf(settings);
  if (keyFile) readKeyFile(keyFile);
  const ownerUrl = await openDatabase(settings, lifecycle, log);
  const roles = await prepareDatabase(ownerUrl);
  const warnings = [...exposed, ...roles.warnings];
  for (const warning of warnings) log.warn(warning);
  const pool = createPool(ownerUrl, { size: settings.databaseConnections, role: roles.appRole ?? undefined });
  pool.on('error', (error) => log.warn(`A database connection broke: ${error.message}`));
  lifecycle.onStop('Database connections', () => pool.end());

  const accounts = settings.demo
    ? await withPool(createPool(ownerUrl, { size: 4, role: roles.appRole ?? undefined, durable: false }), (db) =>
        openDemo(db, (line) => log.info(line)),
      )
    : [];
  const clock = () => new Date();
  const signer = new HeadSigner(pool, keyFile, clock);
  for (const warning of await signer.warnings()) log.warn(warning);
  const { trustProxy, logLevel, hstsDays = tls?.publiclyTrusted ? PUBLIC_HSTS_DAYS : 0 } = settings;
  const parts = {
    db: pool,
    version: ownVersion(),
    warnings,
    clock,
    signer,
    stopping: lifecycle.stopping,
    serving: { tls, trustProxy, logLevel, hstsDays },
    metricsToken: settings.metricsToken,
  };
  lifecycle.onStop('Jobs', await runQueue(pool, jobKinds(parts), (message) => log.warn(message)));
  const app = await createApp(parts);
  lifecycle.onStop('Web server', () => drain(app, settings.drainSeconds));
  if (lifecycle.stopping.aborted) return;
  const { host, port, redirectPort } = settings;
  const url = await listen(app, { host, port, scheme: tls ? 'https' : 'http' });
  const authority = tls?.authority;
  const httpsPort = (app.server.address() as AddressInfo).port;
  const redirect =
    redirectPort === undefined
      ? undefined
      : await startRedirectServer({ host, port: redirectPort, httpsPort, authority });
  if (redirect) lifecycle.onStop('Redirection', redirect.close);
  const said = {
    url,
    accounts,
    ...(redirect ? { redirectUrl: webAddress('http', host, redirect.port) } : {}),
    ...(authority ? { authority: { page: `${url}${TRUST_PAGE}`, sha256: authority.fingerprint } } : {}),
  };
  announce(settings.json, said, addressesElsewhere(host, url));
});

async function withPool<T>(pool: Database, work: (db: Database) => Promise<T>): Promise<T> {
  try {
    return await work(pool);
  } finally {
    // What was loaded without waiting for the disk is safe from here on.
    await pool.query('SET synchronous_commit = on; SELECT txid_current()').catch(() => {});
    await pool.end();
  }
}

function ownVersion(): string {
  const manifest = readFileSync(join(repositoryRoot(), 'package.json'), 'utf8');
  return (JSON.parse(manifest) as { version: string }).version;
}
