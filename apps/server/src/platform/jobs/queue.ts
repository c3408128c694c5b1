import { EventEmitter } from 'node:events';
import { Logger, run, runMigrations, type TaskList, type WorkerEvents } from 'graphile-worker';
import pg from 'pg';
import type { Database } from '../database/pool.ts';
import { signOfLife } from './sign-of-life.ts';

/** What a job is handed: its row's id and input, and a way to say how far it is. */
export interface JobRun {
  readonly siteId: string;
  readonly jobId: string;
  readonly input: unknown;
  /** @throws when the job was taken away meanwhile: what it does is wanted no more */
  readonly progress: (done: number, total?: number) => Promise<void>;
}

/** Does a job and answers its result; jobs come at least once, so each must be safe to repeat. */
export type JobWork = (job: JobRun) => Promise<unknown>;
export type JobKinds = Readonly<Record<string, JobWork>>;

interface JobRow {
  readonly siteId: string;
  readonly jobId: string;
}

/** The queue's own tables; run by the owner, then granted to the role of the app. */
export async function prepareQueue(ownerUrl: string, appRole: string | null): Promise<void> {
  const pool = new pg.Pool({ connectionString: ownerUrl, max: 2 });
  try {
    pool.on('error', () => {});
    pool.on('connect', (client) => client.on('error', () => {}));
    await runMigrations({ pgPool: pool });
    if (!appRole) return;
    const role = pg.escapeIdentifier(appRole);
    await pool.query(`
      GRANT USAGE ON SCHEMA graphile_worker TO ${role};
      GRANT ALL ON ALL TABLES IN SCHEMA graphile_worker TO ${role};
      GRANT ALL ON ALL SEQUENCES IN SCHEMA graphile_worker TO ${role};
      GRANT EXECUTE ON ALL FUNCTIONS IN SCHEMA graphile_worker TO ${role};
    `);
    // The queue's tables let nobody but their owner at a row unless a policy says so.
    const { rows } = await pool.query<{ name: string }>(
      `SELECT c.relname AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
       WHERE n.nspname = 'graphile_worker' AND c.relrowsecurity AND NOT EXISTS (
         SELECT FROM pg_policy p WHERE p.polrelid = c.oid AND p.polname = 'app_works')`,
    );
    for (const { name } of rows) {
      const table = pg.escapeIdentifier(name);
      await pool.query(`CREATE POLICY app_works ON graphile_worker.${table} TO ${role} USING (true) WITH CHECK (true)`);
    }
  } finally {
    await pool.end();
  }
}

async function work(db: Database, kind: string, perform: JobWork, { siteId, jobId }: JobRow): Promise<void> {
  const { rows } = await db.query<{ input: unknown; state: string }>(
    `UPDATE job SET state = 'running' WHERE site_id = $1 AND job_id = $2 AND kind = $3 AND state IN ('waiting', 'running')
     RETURNING input, state`,
    [siteId, jobId, kind],
  );
  const job = rows[0];
  if (!job) return;
  const progress = async (done: number, total?: number) => {
    const { rowCount } = await db.query(
      'UPDATE job SET done = $3, total = coalesce($4, total) WHERE site_id = $1 AND job_id = $2',
      [siteId, jobId, done, total ?? null],
    );
    if (rowCount === 0) throw new Error('The job was given up.');
  };
  try {
    const result = await perform({ siteId, jobId, input: job.input, progress });
    await end(db, siteId, jobId, 'done', result);
  } catch (error) {
    // A refusal is the job's answer, not a failure to be tried again.
    await end(db, siteId, jobId, 'failed', { problem: describe(error) });
  }
}

const describe = (error: unknown): object =>
  error instanceof Error && 'body' in error && typeof error.body === 'function'
    ? (error.body('') as object)
    : { title: 'The job failed', detail: error instanceof Error ? error.message : String(error), errors: [] };

async function end(
  db: Database,
  siteId: string,
  jobId: string,
  state: 'done' | 'failed',
  result: unknown,
): Promise<void> {
  await db.query(
    `UPDATE job SET state = $3, result = $4, ended_at = now(), done = CASE WHEN $3 = 'done' THEN total ELSE done END
     WHERE site_id = $1 AND job_id = $2`,
    [siteId, jobId, state, JSON.stringify(result ?? null)],
  );
}

/** Starts a job: its row, which screens read, and its entry in the queue, together. */
export async function startJob(
  db: Database,
  job: {
    siteId: string;
    jobId: string;
    shutdownId: string | null;
    kind: string;
    total: number;
    input: unknown;
    startedBy: string;
  },
): Promise<string> {
  await db.query(
    `WITH started AS (
       INSERT INTO job (site_id, job_id, shutdown_id, kind, state, total, input, started_by, created_at)
       VALUES ($1, $2, $3, $4, 'waiting', $5, $6, $7, now()) ON CONFLICT (site_id, job_id) DO NOTHING RETURNING 1)
     SELECT graphile_worker.add_job($4, json_build_object('siteId', $1::uuid, 'jobId', $2::uuid), max_attempts := 3)
     FROM started`,
    [job.siteId, job.jobId, job.shutdownId, job.kind, job.total, JSON.stringify(job.input), job.startedBy],
  );
  return job.jobId;
}

/**
 * Runs the queue in this process; each job runs in one process only, however many there are, and those of a process that
 * was killed are taken over by the others.
 * @param complain told what goes wrong with the queue itself
 * @returns stops taking jobs and waits for those under way
 */
export async function runQueue(
  db: Database,
  kinds: JobKinds,
  complain: (message: string) => void = (message) => console.error(message),
): Promise<() => Promise<void>> {
  const taskList: TaskList = Object.fromEntries(
    Object.entries(kinds).map(([kind, perform]) => [
      kind,
      (payload: unknown) => work(db, kind, perform, payload as JobRow),
    ]),
  );
  const events: WorkerEvents = new EventEmitter();
  const names: string[] = [];
  events.on('pool:create', ({ workerPool }) => names.push(workerPool.id));
  const runner = await run({
    pgPool: db,
    taskList,
    events,
    concurrency: 2,
    pollInterval: 1000,
    noHandleSignals: true,
    parsedCronItems: [],
    logger: new Logger(() => (level, message) => {
      if (level === 'error' || level === 'warning') complain(`Jobs: ${message}`);
    }),
  });
  const ends = names.map((name) => signOfLife(db, name, (line) => complain(`Jobs: ${line}`)));
  return async () => {
    await runner.stop();
    for (const end of ends) await end();
  };
}
