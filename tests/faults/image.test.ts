import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { expect, test } from 'vitest';
import { repositoryRoot } from '../../apps/server/src/platform/repository-root.ts';
import type { Checkout } from './support/checkout.ts';
import { RecordingClient } from './support/recording-client.ts';
import { sharedDatabases } from './support/replicas.ts';
import { start, stop } from './support/seatwell.ts';
import { listed } from './support/some-work.ts';

const openDatabase = sharedDatabases();
const dockerfile = readFileSync(join(repositoryRoot(), 'apps', 'server', 'Dockerfile'), 'utf8');
const lastStage = dockerfile.slice(dockerfile.lastIndexOf('\nFROM '));

/** Lays out what the last stage of the Dockerfile copies, and nothing else; the packages are those of this checkout. */
function layOut(checkout: Checkout): Checkout {
  const image = join(checkout.folder, '..', 'image');
  mkdirSync(image);
  const lines = lastStage.match(/^COPY --from=build .*$/gm) ?? [];
  expect(lines.length).toBeGreaterThan(4);
  for (const line of lines) {
    const words = line.split(' ').slice(2);
    const to = words.pop() ?? '';
    for (const word of words) {
      const from = relative('/app', word);
      const built = join(checkout.folder, from);
      const target = join(image, to, to.endsWith('/') ? basename(from) : '');
      cpSync(existsSync(built) ? built : join(repositoryRoot(), from), target, { recursive: true });
    }
  }
  expect(lastStage).toContain('COPY --from=packages /app/node_modules ./node_modules');
  symlinkSync(join(repositoryRoot(), 'node_modules'), join(image, 'node_modules'));
  return { ...checkout, folder: image };
}

const filesOf = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => !path.startsWith('node_modules'))
    .sort();

function run(image: Checkout, words: readonly string[], environment: Readonly<Record<string, string>>) {
  const { status, stderr } = spawnSync(process.execPath, words, {
    cwd: image.folder,
    encoding: 'utf8',
    env: { PATH: process.env['PATH'], TMPDIR: image.temporaryFolder, ...environment },
  });
  return { status, said: stderr };
}

test('what the image holds starts, serves the pages, says whether it is healthy, and writes nothing into itself', async () => {
  const database = await openDatabase();
  const image = layOut(database.checkout);
  const before = filesOf(image.folder);
  const seatwell = await start(image, ['--port', '0'], { DATABASE_URL: database.url });
  const check = ['apps/server/deploy/healthcheck.mjs'];
  const SEATWELL_PORT = new URL(seatwell.url).port;
  expect(seatwell.log()).not.toContain('Building the app');
  expect((await fetch(`${seatwell.url}/`)).headers.get('content-type')).toContain('text/html');
  expect(run(image, check, { SEATWELL_PORT }).status).toBe(0);
  seatwell.process.kill('SIGTERM');
  expect(await seatwell.ended).toEqual({ code: 0, signal: null });
  expect(run(image, check, { SEATWELL_PORT }).status).toBe(1);
  expect(filesOf(image.folder)).toEqual(before);
});

test('a night writes a backup that verifies and keeps as many as it was told', async () => {
  const database = await openDatabase();
  const image = layOut(database.checkout);
  const seatwell = await start(image, ['--port', '0'], { DATABASE_URL: database.url });
  const client = await RecordingClient.begin(seatwell.url);
  await client.must(listed(client).command);
  const backups = join(image.folder, '..', 'backups');
  const nights = (kept: string) =>
    run(image, ['apps/server/launcher.mjs', 'nightly', backups, '--once'], {
      DATABASE_URL: database.url,
      SEATWELL_BACKUPS_KEPT: kept,
    });
  const first = nights('2');
  expect(first, first.said).toMatchObject({ status: 0 });
  const [oldest = ''] = readdirSync(backups);
  expect(oldest).toMatch(/^seatwell-\d{8}T\d{9}Z\.backup$/);
  expect(statSync(join(backups, oldest)).mode & 0o777).toBe(0o600);
  // Names hold the moment at which they were made: one right after the other are two files.
  for (const night of [nights('2'), nights('2')]) expect(night, night.said).toMatchObject({ status: 0 });
  const kept = readdirSync(backups);
  expect(kept).toHaveLength(2);
  expect(kept).not.toContain(oldest);

  expect((await stop(seatwell)).code).toBe(0);
  // Somebody with the owner's rights has changed the record: what is backed up now is not what was written.
  await database.query(
    "ALTER TABLE event DISABLE TRIGGER USER; UPDATE event SET type = 'joint-voided' WHERE type = 'joint-listed'",
  );
  const broken = nights('1');
  expect(broken.status).toBe(1);
  expect(broken.said).toContain('does not verify; the older ones stay');
  expect(readdirSync(backups).filter((name) => kept.includes(name))).toEqual(kept);
});
