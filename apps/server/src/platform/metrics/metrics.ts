import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Database } from '../database/pool.ts';

/**
 * What a process counts for Prometheus. Labels are words of our own (routes, event types, rule codes, kinds of job):
 * never an id, an address or a name.
 */
export function createMetrics(db: Database) {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const registers = [registry];
  const requests = new Counter({
    name: 'seatwell_requests_total',
    help: 'Requests by route and status',
    labelNames: ['method', 'route', 'status'],
    registers,
  });
  const durations = new Histogram({
    name: 'seatwell_request_duration_seconds',
    help: 'Time from a request to its answer by route',
    labelNames: ['route'],
    buckets: [0.01, 0.05, 0.2, 1, 5],
    registers,
  });
  const commands = new Counter({
    name: 'seatwell_commands_total',
    help: 'Commands by event type and outcome: applied, needs-review, or the code of the refusal',
    labelNames: ['type', 'outcome'],
    registers,
  });
  const rules = new Counter({
    name: 'seatwell_rules_fired_total',
    help: 'Rules that a command did not satisfy, by code',
    labelNames: ['rule'],
    registers,
  });
  const signIns = new Counter({
    name: 'seatwell_sign_ins_total',
    help: 'Sign-ins by outcome: signed-in, or the code of the refusal',
    labelNames: ['outcome'],
    registers,
  });
  const wrongSecrets = new Counter({
    name: 'seatwell_signatures_refused_total',
    help: 'Signatures refused for their secret, by reason',
    labelNames: ['reason'],
    registers,
  });
  const liveStreams = new Gauge({
    name: 'seatwell_live_streams',
    help: 'Streams of live updates that are open',
    registers,
  });
  databaseGauges(db, registers);
  return { registry, requests, durations, commands, rules, signIns, wrongSecrets, liveStreams };
}

export type Metrics = ReturnType<typeof createMetrics>;

/** Read when Prometheus asks; what the database does not answer is left out, and `seatwell_database_up` is 0. */
function databaseGauges(db: Database, registers: Registry[]): void {
  new Gauge({
    name: 'seatwell_database_connections',
    help: 'Connections of this process to the database by state; waiting: requests that wait for one',
    labelNames: ['state'],
    registers,
    collect() {
      this.set({ state: 'busy' }, db.totalCount - db.idleCount);
      this.set({ state: 'idle' }, db.idleCount);
      this.set({ state: 'waiting' }, db.waitingCount);
    },
  });
  const size = new Gauge({ name: 'seatwell_database_size_bytes', help: 'Size of the database', registers });
  const jobs = new Gauge({
    name: 'seatwell_jobs',
    help: 'Jobs on the books by kind and state',
    labelNames: ['kind', 'state'],
    registers,
  });
  const upkeep = new Gauge({
    name: 'seatwell_last_upkeep_timestamp_seconds',
    help: 'End of the last backup, restore and verification that went well',
    labelNames: ['kind'],
    registers,
  });
  const locked = new Gauge({
    name: 'seatwell_locked_accounts',
    help: 'Accounts locked after too many wrong secrets',
    registers,
  });
  new Gauge({
    name: 'seatwell_database_up',
    help: 'Whether the database answers',
    registers,
    async collect() {
      try {
        const { rows } = await db.query<{ bytes: number; locked: number }>(
          `SELECT pg_database_size(current_database()) AS bytes,
             (SELECT count(*) FROM account WHERE locked_until > now()) AS locked`,
        );
        size.set(rows[0]?.bytes ?? 0);
        locked.set(rows[0]?.locked ?? 0);
        const counted = await db.query<{ kind: string; state: string; count: number }>(
          'SELECT kind, state, count(*) AS count FROM job GROUP BY kind, state',
        );
        jobs.reset();
        for (const { kind, state, count } of counted.rows) jobs.set({ kind, state }, count);
        const ended = await db.query<{ kind: string; at: number }>(
          "SELECT kind, extract(epoch FROM max(ended_at))::float8 AS at FROM upkeep WHERE outcome = 'ok' GROUP BY kind",
        );
        upkeep.reset();
        for (const { kind, at } of ended.rows) upkeep.set({ kind }, at);
        this.set(1);
      } catch {
        for (const gauge of [size, jobs, upkeep, locked]) gauge.reset();
        this.set(0);
      }
    },
  });
}
