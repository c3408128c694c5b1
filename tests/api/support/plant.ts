import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type {
  BatchAnswer,
  CommandAnswer,
  EventType,
  Payload,
  ProblemBody,
  Role,
  ShutdownEventType,
  SiteEventType,
} from '@seatwell/contract';
import { CATALOGUE } from '@seatwell/workflow';
import type { FastifyInstance } from 'fastify';
import pg from 'pg';
import supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import { type AppParts, createApp } from '../../../apps/server/src/app.ts';
import { jobKinds } from '../../../apps/server/src/job-kinds.ts';
import { createPool, type Database } from '../../../apps/server/src/platform/database/pool.ts';
import { prepareRoles } from '../../../apps/server/src/platform/database/roles.ts';
import { prepareQueue, runQueue } from '../../../apps/server/src/platform/jobs/queue.ts';
import { HeadSigner } from '../../../apps/server/src/platform/record-key/head-signer.ts';
import type { KeyFile } from '../../../apps/server/src/platform/record-key/key-file.ts';
import { createTestDatabase, type TestDatabase } from './database.ts';

export const PASSWORD = 'a long test secret';

/** A person who is signed in, and can send commands. */
export interface SignedIn {
  readonly agent: ReturnType<typeof supertest.agent>;
  readonly personId: string;
  readonly accountId: string;
  readonly email: string;
  readonly role: Role | 'administrator';
}

export interface CommandOptions {
  readonly makeId?: string;
  readonly versionSeen?: number | null;
  readonly performedBy?: readonly string[];
  readonly at?: string;
  readonly alreadyDone?: boolean;
  readonly paperForm?: string;
  readonly eventId?: string;
  readonly secret?: string | null;
}

export interface Plant {
  readonly app: FastifyInstance;
  readonly database: TestDatabase;
  readonly db: Database;
  readonly administrator: SignedIn;
  /** the key that signs heads of its record */
  readonly recordKey: KeyFile;
  /** the server's clock: tests move it */
  now: Date;
  close(): Promise<void>;
}

/** A server on a database of its own, set up by its administrator. */
export async function openPlant(given?: TestDatabase, more: Partial<AppParts> = {}): Promise<Plant> {
  const database = given ?? (await createTestDatabase());
  const owner = new pg.Client({ connectionString: database.url });
  await owner.connect();
  const roles = await prepareRoles(owner);
  await owner.end();
  const db = createPool(database.url, { size: 10, role: roles.appRole ?? undefined });
  const plant: { now: Date } = { now: new Date() };
  await prepareQueue(database.url, roles.appRole);
  const clock = () => plant.now;
  const folder = mkdtempSync(join(tmpdir(), 'seatwell-plant-'));
  const recordKey = { path: join(folder, 'record-key.pem'), given: false };
  const signer = new HeadSigner(db, recordKey, clock);
  const parts = { db, version: 'test', clock, signer, warnings: roles.warnings, ...more };
  const stopQueue = await runQueue(db, jobKinds(parts));
  const app = await createApp(parts);
  await app.listen({ port: 0, host: '127.0.0.1' });
  const agent = supertest.agent(app.server);
  const email = 'administrator@plant.example';
  const { body } = await agent
    .post('/api/v1/first-visit')
    .send({
      siteName: 'Test site',
      timeZone: 'Europe/Oslo',
      units: 'SI',
      administrator: { name: 'Ada Ministrator', company: 'Owner', email, password: PASSWORD },
    })
    .expect(200);
  return Object.assign(plant, {
    app,
    database,
    db,
    recordKey,
    administrator: { agent, personId: body.personId, accountId: body.accountId, email, role: 'administrator' as const },
    close: async () => {
      await stopQueue();
      await app.close();
      // The database is dropped under connections that are just saying goodbye.
      db.on('error', () => {});
      db.on('remove', (client) => client.on('error', () => {}));
      await db.end();
      await database.drop();
      rmSync(folder, { recursive: true, force: true });
    },
  });
}

function envelope(plant: Plant, type: EventType, subjectId: string, options: CommandOptions) {
  return {
    eventId: options.eventId ?? uuidv7(),
    v: 1,
    subjectId,
    deviceTime: options.at ?? plant.now.toISOString(),
    performedBy: options.performedBy ?? [],
    versionSeen: options.versionSeen ?? null,
    alreadyDone: options.alreadyDone ?? false,
    ...(options.paperForm ? { paperForm: options.paperForm } : {}),
    signature:
      CATALOGUE[type].signed && options.secret !== null
        ? { secret: options.secret ?? PASSWORD, meaning: CATALOGUE[type].effect }
        : null,
  };
}

/** Sends a command of the site stream; answers the raw response. */
export const siteCommand = <T extends SiteEventType>(
  plant: Plant,
  who: SignedIn,
  type: T,
  subjectId: string,
  payload: Payload<T>,
  options: CommandOptions = {},
) => who.agent.post(`/api/v1/site/commands/${type}`).send({ ...envelope(plant, type, subjectId, options), payload });

/** Sends a command of a shutdown's stream; answers the raw response. */
export const command = <T extends ShutdownEventType>(
  plant: Plant,
  who: SignedIn,
  shutdownId: string,
  type: T,
  subjectId: string,
  payload: Payload<T>,
  options: CommandOptions = {},
) =>
  who.agent.post(`/api/v1/shutdowns/${shutdownId}/commands/${type}`).send({
    ...envelope(plant, type, subjectId, options),
    makeId: options.makeId ?? null,
    payload,
  });

/** Sends a list under one decision; answers the raw response. */
export const listCommand = <T extends ShutdownEventType>(
  plant: Plant,
  who: SignedIn,
  shutdownId: string,
  type: T,
  rows: readonly { jointId: string; makeId: string; versionSeen: number | null; payload: Payload<T> }[],
  options: CommandOptions & { mode?: 'all' | 'each' } = {},
) =>
  who.agent.post(`/api/v1/shutdowns/${shutdownId}/lists/${type}`).send({
    ...envelope(plant, type, shutdownId, options),
    mode: options.mode ?? 'all',
    rows,
  });

/** The answer of a command that must be accepted; a refusal fails the test with every rule that it names. */
export function accepted(response: supertest.Response): CommandAnswer {
  if (response.status !== 200)
    throw new Error(`Refused with ${response.status}: ${JSON.stringify(response.body, null, 1)}`);
  return response.body as CommandAnswer;
}
export const acceptedList = (response: supertest.Response): BatchAnswer => accepted(response) as unknown as BatchAnswer;

/** The codes of the rules that stopped a command. */
export const refusedBy = (response: supertest.Response): string[] =>
  (response.body as ProblemBody).errors?.map((error) => error.code) ?? [];

/** Registers a person with an account and a role over the whole site, signed in. */
export async function engage(
  plant: Plant,
  role: Role,
  name: string,
  options: { company?: string; reach?: Payload<'role-granted'>['reach'] } = {},
): Promise<SignedIn> {
  const { administrator } = plant;
  const personId = uuidv7();
  const accountId = uuidv7();
  const email = `${name.toLowerCase().replaceAll(/[^a-z]+/g, '.')}.${accountId.slice(-6)}@plant.example`;
  accepted(
    await siteCommand(plant, administrator, 'person-registered', personId, {
      personId,
      name,
      company: options.company ?? 'Contractor',
      badge: null,
      trade: null,
    }),
  );
  accepted(await siteCommand(plant, administrator, 'account-opened', accountId, { accountId, personId, email }));
  const grantId = uuidv7();
  accepted(
    await siteCommand(plant, administrator, 'role-granted', grantId, {
      grantId,
      accountId,
      role,
      reach: options.reach ?? { kind: 'site' },
      endsOn: null,
    }),
  );
  const { body } = await administrator.agent.post(`/api/v1/accounts/${accountId}/first-password`).expect(200);
  const agent = supertest.agent(plant.app.server);
  await agent.post('/api/v1/session').send({ email, password: body.password }).expect(200);
  await agent.put('/api/v1/session/password').send({ current: body.password, next: PASSWORD }).expect(204);
  return { agent, personId, accountId, email, role };
}
