import pg from 'pg';
import { uuidv7 } from 'uuidv7';
import { expect, test } from 'vitest';
import { expectFoldIsProjection } from '../api/support/compare.ts';
import { listenAt } from '../api/support/live-stream.ts';
import { type KeptCommand, RecordingClient } from './support/recording-client.ts';
import { type Replica, type SharedDatabase, sharedDatabases } from './support/replicas.ts';
import { stop } from './support/seatwell.ts';
import { refusesConnections } from './support/slow-requests.ts';
import { listed } from './support/some-work.ts';

const openDatabase = sharedDatabases();

const portOf = ({ url }: Replica) => Number(new URL(url).port);
const health = async ({ url }: Replica) => {
  const answer = await fetch(`${url}/api/v1/health`);
  return { answer: answer.status, ...((await answer.json()) as { status: string; ready: boolean }) };
};

async function openTwo(): Promise<{ database: SharedDatabase; one: Replica; other: Replica; client: RecordingClient }> {
  const database = await openDatabase();
  // Both at once on an empty database: one migrates, the other waits for it.
  const [one, other] = await Promise.all([database.start(), database.start()]);
  return { database, one, other, client: await RecordingClient.begin(one.url) };
}

test('two processes on one database share the sign-in and hear of each other’s records', async () => {
  const { one, other, client } = await openTwo();
  expect(await health(one)).toMatchObject({ status: 'ok', ready: true });
  const session = (replica: Replica) =>
    fetch(`${replica.url}/api/v1/session`, { headers: { cookie: client.cookie } }).then(({ status }) => status);
  expect(await session(one)).toBe(200);
  expect(await session(other)).toBe(200);

  const live = await listenAt(portOf(other), client.cookie, `/api/v1/shutdowns/${client.shutdownId}/live`);
  await live.until(() => live.heads().length === 1);
  const before = live.heads()[0]?.version ?? 0;
  await client.must(listed(client).command);
  await live.until(() => live.heads().length === 2);
  expect(live.heads()[1]?.version).toBe(before + 1);

  // Signed out at the one, signed out at the other.
  const left = await fetch(`${one.url}/api/v1/session`, { method: 'DELETE', headers: { cookie: client.cookie } });
  expect(left.status).toBe(204);
  expect(await session(other)).toBe(401);
  for (const replica of [one, other]) expect((await stop(replica)).code).toBe(0);
});

/** A list that is long enough for a job and keeps a process busy for a while, on a joint of its own. */
async function longList(client: RecordingClient, rows: number): Promise<KeptCommand> {
  const { command, joint } = listed(client);
  await client.must(command);
  return client.keepList(
    'joint-specified',
    Array.from({ length: rows }, (_, index) => ({
      jointId: joint.jointId,
      makeId: joint.makeId,
      versionSeen: joint.version,
      payload: { remark: `Row ${index}`, reason: null } as never,
    })),
  );
}

/** Locks every joint that there is, as a long piece of work would, until it is released. */
async function holdJoints(database: SharedDatabase): Promise<() => Promise<void>> {
  const client = new pg.Client({ connectionString: database.url });
  await client.connect();
  await client.query('BEGIN; SELECT FROM joint FOR UPDATE');
  return () => client.end();
}

const JOBS = `SELECT j.kind, j.state, j.result, e.event_id, e.row_count FROM job j
  LEFT JOIN event e ON e.event_id = (j.input->'batch'->>'eventId')::uuid ORDER BY j.job_id`;

async function jobsEnd(database: SharedDatabase, count: number) {
  for (;;) {
    const jobs = await database.query<{ state: string; event_id: string; result: { recorded: number } }>(JOBS);
    if (jobs.length === count && jobs.every(({ state }) => state === 'done' || state === 'failed')) return jobs;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

const atWork = async (database: SharedDatabase): Promise<string[]> => {
  const rows = await database.query<{ name: string }>(
    'SELECT DISTINCT locked_by AS name FROM graphile_worker._private_jobs WHERE locked_by IS NOT NULL',
  );
  return rows.map(({ name }) => name);
};

test('kill -9 of one of two under load: all that was acknowledged is on record once, and the other goes on with its jobs', async () => {
  const { database, one, other, client } = await openTwo();
  const lists: KeptCommand[] = [];
  for (let index = 0; index < 6; index += 1) lists.push(await longList(client, 1_000));
  // Their joints are held, so that the jobs are under way when the process is killed.
  const release = await holdJoints(database);
  for (const [index, list] of lists.entries()) {
    const answer = await client.ask(list, index % 2 === 0 ? one.url : other.url);
    expect(answer).toMatchObject({ status: 200, body: { jobId: expect.any(String) } });
  }
  while ((await atWork(database)).length < 2) await new Promise((resolve) => setTimeout(resolve, 20));

  // People without a place of their own: each command goes to the one or the other, and again where no answer came.
  const acknowledged: KeptCommand[] = [];
  let killed = false;
  let sentAgain = 0;
  let afterwards = 0;
  const person = async (number: number) => {
    for (let turn = number; afterwards < 100; turn += 1) {
      const { command } = listed(client);
      const [first, second] = turn % 2 === 0 ? [one.url, other.url] : [other.url, one.url];
      let status = await client.send(command, first);
      if (status === null) {
        sentAgain += 1;
        status = await client.send(command, second);
      }
      expect(status).toBe(200);
      acknowledged.push(command);
      if (killed) afterwards += 1;
      if (acknowledged.length === 100) {
        one.process.kill('SIGKILL');
        killed = true;
      }
    }
  };
  await Promise.all(Array.from({ length: 8 }, (_, number) => person(number)));
  await one.ended;
  await release();
  expect(sentAgain).toBeGreaterThan(0);
  expect(acknowledged.length).toBeGreaterThanOrEqual(200);

  const jobs = await jobsEnd(database, lists.length);
  expect(jobs.map(({ state }) => state)).toEqual(lists.map(() => 'done'));
  expect(new Set(jobs.map(({ event_id }) => event_id))).toEqual(new Set(lists.map(({ eventId }) => eventId)));
  for (const { result } of jobs) expect(result.recorded).toBe(1_000);
  expect(other.log()).toContain('Took over the jobs of processes that ended');

  const read = await database.withClient((database) => expectFoldIsProjection(database, client.shutdownId));
  const times = (eventId: string) => read.events.filter((event) => event.eventId === eventId).length;
  for (const { eventId } of [...acknowledged, ...lists]) expect(times(eventId)).toBe(1);

  // A new process takes the place of the killed one.
  const next = await database.start();
  expect(await client.send(listed(client).command, next.url)).toBe(200);
  for (const replica of [other, next]) expect((await stop(replica)).code).toBe(0);
});

test('a rolling restart: who is told to stop says so, finishes what it has and its job, and nobody misses a record', async () => {
  const database = await openDatabase();
  const one = await database.start({ SEATWELL_DRAIN_SECONDS: '5' });
  const client = await RecordingClient.begin(one.url);
  const list = await longList(client, 1_000);
  const release = await holdJoints(database);
  expect(await client.send(list)).toBe(200);
  while ((await atWork(database)).length === 0) await new Promise((resolve) => setTimeout(resolve, 20));
  const other = await database.start();

  one.process.kill('SIGTERM');
  await one.logged('SIGTERM');
  // Still answering, so that a balancer has time to look elsewhere: not ready, and alive.
  expect(await health(one)).toMatchObject({ answer: 503, status: 'draining', ready: false });
  expect((await fetch(`${one.url}/api/v1/health/live`)).status).toBe(200);
  expect(await health(other)).toMatchObject({ answer: 200, ready: true });
  const late = listed(client).command;
  expect(await client.send(late)).toBe(200);
  const live = await listenAt(portOf(one), client.cookie, `/api/v1/shutdowns/${client.shutdownId}/live`);

  await refusesConnections(one.url);
  await live.ended;
  expect(await atWork(database)).toHaveLength(1);
  await release();
  expect(await one.ended).toEqual({ code: 0, signal: null });
  const [job] = await jobsEnd(database, 1);
  expect(job).toMatchObject({ state: 'done', result: { recorded: 1_000 } });
  expect(other.log()).not.toContain('Took over');
  expect(await client.send(late, other.url)).toBe(200);
  const read = await database.withClient((database) => expectFoldIsProjection(database, client.shutdownId));
  for (const { eventId } of [late, list]) {
    expect(read.events.filter((event) => event.eventId === eventId)).toHaveLength(1);
  }
  expect((await stop(other)).code).toBe(0);
});

test('a job that was begun three times by processes that were killed is given up and says so', async () => {
  const { database, one, other, client } = await openTwo();
  expect((await stop(other)).code).toBe(0);
  const list = await longList(client, 600);
  expect(await client.send(list)).toBe(200);
  await jobsEnd(database, 1);
  // As three killed processes leave it: locked by a name that nobody holds, and no try left.
  const site = await database.query<{ site_id: string }>('SELECT site_id FROM site');
  const jobId = uuidv7();
  await database.query(
    `INSERT INTO job (site_id, job_id, kind, state, total, input, started_by, created_at)
     SELECT site_id, $2, kind, 'running', total, input, started_by, now() FROM job WHERE site_id = $1`,
    [site[0]?.site_id, jobId],
  );
  await database.query(
    `SELECT graphile_worker.add_job('record-list', json_build_object('siteId', $1::uuid, 'jobId', $2::uuid), max_attempts := 3, run_at := now() + interval '1 day')`,
    [site[0]?.site_id, jobId],
  );
  await database.query(
    "UPDATE graphile_worker._private_jobs SET attempts = 3, locked_by = 'pool-of-a-dead-process', locked_at = now() - interval '1 minute'",
  );
  const jobs = await jobsEnd(database, 2);
  expect(jobs[1]).toMatchObject({ state: 'failed', result: { problem: { title: 'The job failed' } } });
  expect((await stop(one)).code).toBe(0);
});
