import { Console } from 'node:console';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { openDemo } from '../../../prisma/demo/open-demo.ts';
import type { DemoAccount } from '../../../prisma/demo/people-and-tools.ts';
import { createApp } from './app.ts';
import { jobKinds } from './job-kinds.ts';
import { readSettings, type Settings, usage } from './platform/config.ts';
import { migrate } from './platform/database/migrate.ts';
import { openDatabase } from './platform/database/open.ts';
import { createPool, type Database } from './platform/database/pool.ts';
import { prepareRoles } from './platform/database/roles.ts';
import { drain, listen } from './platform/http-server.ts';
import { prepareQueue, runQueue } from './platform/jobs/queue.ts';
import { createLifecycle } from './platform/lifecycle.ts';
import { createLog } from './platform/log.ts';
import { repositoryRoot } from './platform/repository-root.ts';

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
  const ownerUrl = await openDatabase(settings, lifecycle, log);
  await migrate(ownerUrl);

  const roles = await withOwner(ownerUrl, prepareRoles);
  await prepareQueue(ownerUrl, roles.appRole);
  for (const warning of roles.warnings) log.warn(warning);
  const pool = createPool(ownerUrl, { size: 20, role: roles.appRole ?? undefined });
  pool.on('error', (error) => log.warn(`A database connection broke: ${error.message}`));
  lifecycle.onStop('Database connections', () => pool.end());

  const accounts = settings.demo
    ? await withPool(createPool(ownerUrl, { size: 4, role: roles.appRole ?? undefined, durable: false }), (db) =>
        openDemo(db, (line) => log.info(line)),
      )
    : [];
  const parts = { db: pool, version: ownVersion(), warnings: roles.warnings, clock: () => new Date() };
  const queue = await runQueue(pool, jobKinds(parts));
  lifecycle.onStop('Jobs', () => queue.stop());
  const app = await createApp(parts);
  lifecycle.onStop('Web server', () => drain(app));
  if (lifecycle.stopping.aborted) return;
  announce(settings, await listen(app, settings), accounts);
});

async function withOwner<T>(ownerUrl: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

async function withPool<T>(pool: Database, work: (db: Database) => Promise<T>): Promise<T> {
  try {
    return await work(pool);
  } finally {
    // What was loaded without waiting for the disk is safe from here on.
    await pool.query('SET synchronous_commit = on; SELECT txid_current()').catch(() => {});
    await pool.end();
  }
}

/** One line of JSON for programs, or a few for people. */
function announce(settings: Settings, url: string, accounts: readonly DemoAccount[]): void {
  if (settings.json) {
    process.stdout.write(`${JSON.stringify({ url, accounts })}\n`);
    return;
  }
  process.stdout.write(`Seatwell runs at ${url}  (Ctrl-C stops it)\n`);
  for (const { role, email, password } of accounts) process.stdout.write(`  ${role}: ${email}  ${password}\n`);
}

function ownVersion(): string {
  const manifest = readFileSync(join(repositoryRoot(), 'package.json'), 'utf8');
  return (JSON.parse(manifest) as { version: string }).version;
}
