import { ROLES, type Role } from '@seatwell/contract';
import { ACTIONS, type Action, roleAllows } from '@seatwell/workflow';
import Fastify from 'fastify';
import supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import { afterAll, describe, expect, it } from 'vitest';
import { type DeclaredRoute, declaredActionsPlugin } from '../../apps/server/src/platform/http/declared-actions.ts';
import { signInPlugin } from '../../apps/server/src/platform/sign-in/plugin.ts';
import { accepted, engage, refusedBy, type SignedIn, siteCommand } from './support/plant.ts';
import { openShutdown } from './support/shutdown.ts';
import { taleTo } from './support/tale.ts';
import { openingBy } from './support/work.ts';

// The tests are generated from the routes, so the server stands before they are.
const shutdown = await openShutdown();
const { plant } = shutdown;
const people = new Map<Role | 'none', SignedIn>();
for (const role of ROLES) people.set(role, await engage(plant, role, `Only ${role}`));
const roleless = await engage(plant, 'management', 'No Role');
await endRole(roleless);
people.set('none', roleless);
afterAll(() => shutdown.close());

async function endRole(who: SignedIn): Promise<void> {
  const { rows } = await plant.db.query('SELECT grant_id FROM role_grant WHERE account_id = $1', [who.accountId]);
  const grantId: string = rows[0].grant_id;
  accepted(await siteCommand(plant, plant.administrator, 'role-ended', grantId, { reason: 'Gone home' }));
}

const person = (role: Role | 'none'): SignedIn => {
  const found = people.get(role);
  if (!found) throw new Error(`Nobody has the role ${role}.`);
  return found;
};

const eventCount = async (): Promise<number> => (await plant.db.query('SELECT count(*) AS n FROM event')).rows[0].n;

const addressOf = ({ url }: DeclaredRoute): string =>
  url.replace(':shutdownId', shutdown.shutdownId).replaceAll(/:[a-zA-Z]+/g, () => uuidv7());

type Agent = SignedIn['agent'] | ReturnType<typeof supertest>;

function ask(agent: Agent, route: DeclaredRoute) {
  const method = route.method.toLowerCase() as 'get' | 'post' | 'put' | 'delete' | 'patch';
  const request = agent[method](addressOf(route));
  return method === 'get' ? request : request.send({});
}

const routes = plant.app.declaredRoutes;
const guarded = routes.filter((route) => route.action !== 'public');
const ofTheTable = guarded.filter((route) => route.action !== 'signed-in');

/** Those whose only role does not allow the action; where everyone may, somebody without any role. */
const forbiddenTo = (action: Action): (Role | 'none')[] => [
  'none',
  ...ROLES.filter((role) => !roleAllows(role, action)),
];

const named = (list: readonly DeclaredRoute[]) => list.map((route) => [`${route.method} ${route.url}`, route] as const);

describe('every route but the public ones', () => {
  it('is one of the API’s, which there are', () => {
    expect(ofTheTable.length).toBeGreaterThan(90);
    expect(
      routes
        .filter((route) => route.action === 'public')
        .map((route) => route.url)
        .sort(),
    ).toEqual(
      [
        '/api/v1/first-visit',
        '/api/v1/first-visit',
        '/api/v1/health',
        '/api/v1/health/live',
        '/api/v1/openapi.json',
        '/api/v1/session',
      ].sort(),
    );
  });

  it.each(named(guarded))('%s asks to sign in first', async (_name, route) => {
    const response = await ask(supertest(plant.app.server), route);
    expect(response.status).toBe(401);
    expect(response.body.type).toBe('urn:seatwell:problem:not-signed-in');
    expect(response.type).toBe('application/problem+json');
  });
});

describe('every route with an action of the role table', () => {
  it.each(named(ofTheTable))('%s is forbidden to all roles that do not have it', async (_name, route) => {
    const before = await eventCount();
    for (const role of forbiddenTo(route.action as Action)) {
      const response = await ask(person(role).agent, route);
      expect(response.status, role).toBe(403);
      expect(response.body, role).toMatchObject({ type: 'urn:seatwell:problem:not-allowed', status: 403 });
      expect(response.body.detail).toContain(ACTIONS[route.action as Action].says);
    }
    expect(await eventCount()).toBe(before);
  });

  // A live stream is an answer without an end: session.test.ts listens to it.
  const ending = ofTheTable.filter((route) => !route.url.endsWith('/live'));
  it.each(named(ending))('%s is open to the roles that have it', async (_name, route) => {
    const role = ROLES.find((each) => roleAllows(each, route.action as Action)) as Role;
    const response = await ask(person(role).agent, route);
    expect([401, 403, 500]).not.toContain(response.status);
  });
});

describe('a role with a narrower reach', () => {
  it('does not reach the joint of another crew, area or pack', async () => {
    const tale = await taleTo(shutdown, 'released');
    for (const reach of ['crew', 'area', 'pack'] as const) {
      const technician = await engage(plant, 'technician', `Of another ${reach}`, {
        reach: { kind: reach, id: uuidv7() },
      });
      const response = await tale.say('opened', { by: technician });
      expect(response.status).toBe(403);
      expect(refusedBy(response)).toEqual(['not-allowed']);
    }
    expect(await tale.stage()).toBe('released');
  });

  it('reaches what is assigned to oneself, and nothing else', async () => {
    const tale = await taleTo(shutdown, 'released', { makes: [{ crewId: null }] });
    const { technician } = shutdown;
    await endRole(technician);
    const grantId = uuidv7();
    const own = {
      grantId,
      accountId: technician.accountId,
      role: 'technician',
      reach: { kind: 'own-assignments' },
    } as const;
    accepted(await siteCommand(plant, plant.administrator, 'role-granted', grantId, { ...own, endsOn: null }));
    expect((await tale.say('opened')).status).toBe(403);
    await tale.tell('make-assigned');
    await tale.tell('opened', { payload: openingBy(shutdown) });
  });
});

describe('a route of the API', () => {
  const scratch = async () => {
    const app = Fastify();
    await app.register(signInPlugin, { db: plant.db });
    await app.register(declaredActionsPlugin);
    return app;
  };

  it('without a declared action does not start', async () => {
    const app = await scratch();
    expect(() => app.get('/api/v1/everything', async () => ({}))).toThrow(
      /GET \/api\/v1\/everything declares no action/,
    );
  });

  it('with an action that the role table does not have does not start', async () => {
    const app = await scratch();
    const config = { action: 'do-anything' as Action };
    expect(() => app.post('/api/v1/everything', { config }, async () => ({}))).toThrow(/declares no action/);
  });

  it('with one starts, and is listed with it', async () => {
    const app = await scratch();
    app.get('/api/v1/joints', { config: { action: 'read-register' } }, async () => ({}));
    await app.ready();
    expect(app.declaredRoutes).toEqual([{ method: 'GET', url: '/api/v1/joints', action: 'read-register' }]);
    expect((await app.inject('/api/v1/joints')).statusCode).toBe(401);
  });
});
