import { randomBytes } from 'node:crypto';
import { firstVisit, id, me, preferences, secret, signIn } from '@seatwell/contract';
import { ACTIONS, type Action } from '@seatwell/workflow';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { allowsSomewhere } from '../../platform/access/allows.ts';
import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { accountBySecret, confirmSecret } from '../../platform/sign-in/accounts.ts';
import { clearSessionCookie, requireActor, sessionToken, setSessionCookie } from '../../platform/sign-in/plugin.ts';
import { hashSecret } from '../../platform/sign-in/secrets.ts';
import { type Actor, endSession, loadActor, startSession } from '../../platform/sign-in/sessions.ts';
import { listShutdowns } from '../shutdowns/load-shutdown.ts';
import { setUpSite, siteIsSetUp } from './set-up-site.ts';

async function describe(db: Database, actor: Actor): Promise<z.infer<typeof me>> {
  const { rows } = await db.query<{ name: string; time_zone: string; units: 'SI' | 'US'; preferences: object }>(
    `SELECT s.name, s.time_zone, s.units, a.preferences FROM site s JOIN account a ON a.site_id = s.site_id
     WHERE s.site_id = $1 AND a.account_id = $2`,
    [actor.siteId, actor.accountId],
  );
  const site = rows[0];
  if (!site) throw new Problem('not-signed-in', 'The account is gone.');
  const shutdowns = await listShutdowns(db, actor.siteId);
  return {
    accountId: actor.accountId,
    personId: actor.personId,
    name: actor.name,
    company: actor.company,
    email: actor.email,
    site: { siteId: actor.siteId, name: site.name, timeZone: site.time_zone, units: site.units },
    grants: [...actor.grants],
    actions: (Object.keys(ACTIONS) as Action[]).filter((action) => allowsSomewhere(actor, action)),
    preferences: site.preferences,
    shutdowns: shutdowns.map(({ shutdownId, name, startsOn, endsOn, timeZone }) => ({
      shutdownId,
      name,
      startsOn,
      endsOn,
      timeZone,
    })),
  };
}

/** Plants sit behind one address: the limit is by account and address together, and a wider one by address. */
const signInLimits = {
  rateLimit: {
    max: 20,
    timeWindow: '1 minute',
    // After the body is read, so that the account is known.
    hook: 'preHandler' as const,
    keyGenerator: (request: FastifyRequest) =>
      `${request.ip} ${String((request.body as { email?: unknown } | undefined)?.email ?? '').toLowerCase()}`,
  },
};

/** Signing in and out, the first visit of an empty installation, and each person's own settings. */
export async function sessionRoutes(instance: FastifyInstance, { db }: { db: Database }): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();

  app.get(
    '/api/v1/first-visit',
    {
      schema: { tags: ['Session'], response: { 200: z.object({ needed: z.boolean() }) } },
      config: { action: 'public' },
    },
    async () => ({ needed: !(await siteIsSetUp(db)) }),
  );

  app.post(
    '/api/v1/first-visit',
    {
      schema: { tags: ['Session'], body: firstVisit, response: { 200: me } },
      config: { action: 'public', ...signInLimits },
    },
    async (request, reply) => {
      const { siteId, accountId } = await setUpSite(db, request.body, new Date());
      const { token, expiresAt } = await startSession(db, siteId, accountId, request.headers['user-agent'] ?? null);
      setSessionCookie(request, reply, token, expiresAt);
      return describe(db, await existing(db, siteId, accountId));
    },
  );

  app.post(
    '/api/v1/session',
    {
      schema: { tags: ['Session'], body: signIn, response: { 200: me } },
      config: { action: 'public', ...signInLimits },
    },
    async (request, reply) => {
      const { siteId, accountId } = await accountBySecret(db, request.body.email, request.body.password, request.ip);
      const { token, expiresAt } = await startSession(db, siteId, accountId, request.headers['user-agent'] ?? null);
      setSessionCookie(request, reply, token, expiresAt);
      return describe(db, await existing(db, siteId, accountId));
    },
  );

  app.get(
    '/api/v1/session',
    { schema: { tags: ['Session'], response: { 200: me } }, config: { action: 'signed-in' } },
    (request) => describe(db, requireActor(request)),
  );

  app.delete(
    '/api/v1/session',
    { schema: { tags: ['Session'] }, config: { action: 'signed-in' } },
    async (request, reply) => {
      const token = sessionToken(request);
      if (token) await endSession(db, token);
      clearSessionCookie(request, reply);
      return reply.status(204).send();
    },
  );

  app.put(
    '/api/v1/session/preferences',
    { schema: { tags: ['Session'], body: preferences, response: { 200: me } }, config: { action: 'signed-in' } },
    async (request) => {
      const actor = requireActor(request);
      await db.query(
        'UPDATE account SET preferences = preferences || $3::jsonb WHERE site_id = $1 AND account_id = $2',
        [actor.siteId, actor.accountId, JSON.stringify(request.body)],
      );
      return describe(db, actor);
    },
  );

  app.put(
    '/api/v1/session/password',
    {
      schema: { tags: ['Session'], body: z.strictObject({ current: z.string().max(200), next: secret }) },
      config: { action: 'signed-in' },
    },
    async (request, reply) => {
      const actor = requireActor(request);
      await confirmSecret(db, actor.siteId, actor.accountId, request.body.current);
      await db.query('UPDATE account SET secret_hash = $3 WHERE site_id = $1 AND account_id = $2', [
        actor.siteId,
        actor.accountId,
        await hashSecret(request.body.next),
      ]);
      return reply.status(204).send();
    },
  );

  app.post(
    '/api/v1/accounts/:accountId/first-password',
    {
      schema: {
        tags: ['People'],
        params: z.object({ accountId: id }),
        response: { 200: z.object({ password: z.string() }) },
      },
      config: { action: 'manage-accounts' },
    },
    async (request) => {
      const actor = requireActor(request);
      const password = randomBytes(12).toString('base64url');
      const { rowCount } = await db.query(
        'UPDATE account SET secret_hash = $3, failures = 0, locked_until = NULL WHERE site_id = $1 AND account_id = $2 AND closed_at IS NULL',
        [actor.siteId, request.params.accountId, await hashSecret(password)],
      );
      if (rowCount === 0) throw new Problem('not-found', 'There is no such open account.');
      await db.query('DELETE FROM session WHERE site_id = $1 AND account_id = $2', [
        actor.siteId,
        request.params.accountId,
      ]);
      return { password };
    },
  );
}

async function existing(db: Database, siteId: string, accountId: string): Promise<Actor> {
  const actor = await loadActor(db, siteId, accountId);
  if (!actor) throw new Problem('not-signed-in', 'The account is gone.');
  return actor;
}
