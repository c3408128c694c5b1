import { z } from 'zod';
import { id, instant } from '../primitives.ts';
import { personRef } from './common.ts';

const upkeepRun = z.object({
  kind: z.enum(['backup', 'restore', 'verification']),
  outcome: z.enum(['ok', 'failed']),
  startedAt: instant,
  endedAt: instant,
  /** backup: where to, as the command was told */
  file: z.string().nullable(),
  size_bytes: z.number().nullable(),
  events: z.int().nullable(),
  /** verification: how many things are wrong, and the first of them */
  problems: z.int().nullable(),
  findings: z.array(z.string()),
});
export type UpkeepRun = z.infer<typeof upkeepRun>;

const operatorJob = z.object({
  jobId: id,
  kind: z.string(),
  state: z.enum(['waiting', 'running', 'done', 'failed']),
  done: z.int(),
  total: z.int(),
  startedBy: personRef,
  createdAt: instant,
  endedAt: instant.nullable(),
  /** why it failed */
  problem: z.string().nullable(),
});
export type OperatorJob = z.infer<typeof operatorJob>;

/** How long traces of people are kept. */
export const retention = z.strictObject({
  /** hours after which a session ends */
  sessionHours: z.int().min(1).max(72),
  /** days for which addresses of wrong sign-ins are kept */
  signInDays: z.int().min(1).max(365),
  /** days after which a person whose accounts are all closed is shown as one to erase; null: never */
  leaverDays: z.int().min(1).max(3650).nullable(),
});
export type Retention = z.infer<typeof retention>;

/** `GET /api/v1/operator/status`: what an administrator looks at to know that the server does well. */
export const operatorStatus = z.object({
  at: instant,
  version: z.string(),
  processStartedAt: instant,
  warnings: z.array(z.string()),
  database: z.object({
    version: z.string(),
    size_bytes: z.number(),
    role: z.string(),
    connections: z.object({ busy: z.int(), idle: z.int(), waiting: z.int() }),
    migrations: z.int(),
    lastMigration: z.string(),
  }),
  /** which key signs heads of the record, as the SHA-256 of its public part; or why none does, and the remedy */
  signing: z.object({ fingerprint: z.string().nullable(), unsigned: z.string().nullable() }),
  streams: z.array(
    z.object({
      streamId: id,
      kind: z.enum(['site', 'shutdown']),
      name: z.string(),
      sequence: z.int(),
      /** Merkle root, hex */
      root: z.string(),
      changedAt: instant,
    }),
  ),
  jobs: z.object({ waiting: z.int(), running: z.int(), failed: z.int(), recent: z.array(operatorJob) }),
  /** the last run of each kind */
  upkeep: z.array(upkeepRun),
  signIn: z.object({
    sessions: z.int(),
    locked: z.array(z.object({ accountId: id, person: personRef, email: z.string(), lockedUntil: instant })),
    addresses: z.array(
      z.object({
        address: z.string(),
        failures: z.int(),
        lastAt: instant,
        blockedUntil: instant.nullable(),
      }),
    ),
  }),
  retention,
  /** persons who left long ago, by the setting, and whose names are still kept */
  leavers: z.array(z.object({ person: personRef, leftAt: instant })),
});
export type OperatorStatus = z.infer<typeof operatorStatus>;
