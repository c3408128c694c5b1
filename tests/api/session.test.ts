import supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../apps/server/src/app.ts';
import { listen } from './support/live-stream.ts';
import { accepted, command, engage, PASSWORD } from './support/plant.ts';
import { openShutdown, type Shutdown } from './support/shutdown.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

const typeOf = (response: { body: { type?: string } }) => response.body.type?.replace('urn:seatwell:problem:', '');
const stranger = () => supertest.agent(shutdown.plant.app.server);
const signIn = (email: string, password: string) => stranger().post('/api/v1/session').send({ email, password });

describe('the first visit', () => {
  const visit = (email: string) => ({
    siteName: 'Another site',
    timeZone: 'Europe/Oslo',
    units: 'SI',
    administrator: { name: 'Ada Second', company: 'Owner', email, password: PASSWORD },
  });

  it('sets the site up once', async () => {
    const again = await stranger().post('/api/v1/first-visit').send(visit('second@plant.example'));
    expect(again.status).toBe(409);
    expect(typeOf(again)).toBe('already-set-up');
    expect((await stranger().get('/api/v1/first-visit')).body).toEqual({ needed: false });
    expect((await signIn('second@plant.example', PASSWORD)).status).toBe(401);
  });

  it('of two at once sets it up for one of them, and the other signs in nowhere', async () => {
    const empty = await emptyPlant();
    try {
      expect((await supertest(empty.app.server).get('/api/v1/first-visit')).body).toEqual({ needed: true });
      const emails = ['first@plant.example', 'second@plant.example', 'third@plant.example'];
      const answers = await Promise.all(
        emails.map((email) => supertest(empty.app.server).post('/api/v1/first-visit').send(visit(email))),
      );
      expect(answers.map((answer) => answer.status).sort()).toEqual([200, 409, 409]);
      const { rows } = await empty.db.query(
        'SELECT (SELECT count(*) FROM site) AS sites, (SELECT count(*) FROM account) AS accounts',
      );
      expect(rows).toEqual([{ sites: 1, accounts: 1 }]);
    } finally {
      await empty.close();
    }
  });

  it('with a time zone that does not exist sets nothing up', async () => {
    const empty = await emptyPlant();
    try {
      const odd = { ...visit('first@plant.example'), timeZone: 'Europe/Atlantis' };
      expect((await supertest(empty.app.server).post('/api/v1/first-visit').send(odd)).status).toBe(400);
      expect((await supertest(empty.app.server).get('/api/v1/first-visit')).body).toEqual({ needed: true });
    } finally {
      await empty.close();
    }
  });
});

describe('signing in', () => {
  it('answers alike for a wrong secret and for an address that nobody has', async () => {
    const known = await engage(shutdown.plant, 'technician', 'Kno Wn');
    const wrong = await signIn(known.email, 'not the secret at all');
    const unknown = await signIn('nobody@plant.example', 'not the secret at all');
    for (const response of [wrong, unknown]) {
      expect(response.status).toBe(401);
      expect(typeOf(response)).toBe('wrong-sign-in');
    }
    expect(unknown.body.title).toBe(wrong.body.title);
  });

  it('keeps the session in a cookie that no script reads', async () => {
    const { email } = await engage(shutdown.plant, 'technician', 'Coo Kie');
    const response = await signIn(email.toUpperCase(), PASSWORD);
    expect(response.status).toBe(200);
    expect(response.headers['set-cookie']?.[0]).toMatch(/; Path=\/;.*HttpOnly; SameSite=Lax/);
    expect(response.text).not.toContain('secret');
  });

  it('locks the account for a while after six wrong secrets, and starts again after a right one', async () => {
    const { email } = await engage(shutdown.plant, 'technician', 'For Getful');
    for (let wrong = 1; wrong <= 5; wrong += 1) expect((await signIn(email, 'wrong')).status).toBe(401);
    expect((await signIn(email, PASSWORD)).status).toBe(200);
    for (let wrong = 1; wrong <= 6; wrong += 1) expect((await signIn(email, 'wrong')).status).toBe(401);
    const right = await signIn(email, PASSWORD);
    expect(right.status).toBe(423);
    expect(typeOf(right)).toBe('locked-out');
  });

  it('is limited by account and address: after twenty tries in a minute further ones are not even looked at', async () => {
    const email = 'guessed@plant.example';
    const statuses: number[] = [];
    for (let attempt = 0; attempt < 21; attempt += 1) statuses.push((await signIn(email, 'guess')).status);
    expect(statuses.slice(0, 20)).toEqual(Array.from({ length: 20 }, () => 401));
    expect(statuses[20]).toBe(429);
    const limited = await signIn(email, 'guess');
    expect(limited.type).toBe('application/problem+json');
    expect(typeOf(limited)).toBe('too-many-requests');
    // Others behind the same address still come in.
    const { email: other } = await engage(shutdown.plant, 'technician', 'Be Hind');
    expect((await signIn(other, PASSWORD)).status).toBe(200);
  });
});

describe('a live stream', () => {
  const listArea = async () => {
    const areaId = uuidv7();
    const { plant, coordinator, shutdownId } = shutdown;
    const area = { areaId, code: areaId.slice(-6), name: 'Unit' };
    return accepted(await command(plant, coordinator, shutdownId, 'area-listed', areaId, area));
  };

  it('tells the head as it is, and each new one soon after it was recorded', async () => {
    const live = await listen(shutdown.plant, shutdown.technician, `/api/v1/shutdowns/${shutdown.shutdownId}/live`);
    await live.until(() => live.heads().length === 1);
    const { sequence } = await listArea();
    await live.until(() => live.heads().some((head) => head.version === sequence));
    const { rows } = await shutdown.plant.db.query(
      "SELECT encode(root, 'hex') AS root FROM stream_head WHERE stream_id = $1",
      [shutdown.shutdownId],
    );
    expect(live.heads().at(-1)).toMatchObject({ version: sequence, root: rows[0].root });
    live.close();
  });

  it('tells nothing more once its person has signed out', async () => {
    const leaver = await engage(shutdown.plant, 'technician', 'Lea Ving');
    const path = `/api/v1/shutdowns/${shutdown.shutdownId}/live`;
    const live = await listen(shutdown.plant, leaver, path);
    await live.until(() => live.heads().length === 1);
    await leaver.agent.delete('/api/v1/session').expect(204);
    expect((await leaver.agent.get('/api/v1/session')).status).toBe(401);
    await live.ended;
    expect((await leaver.agent.get(path)).status).toBe(401);
  });
});

/** A server on a database that nobody has set up. */
async function emptyPlant() {
  const { createTestDatabase } = await import('./support/database.ts');
  const { createPool } = await import('../../apps/server/src/platform/database/pool.ts');
  const database = await createTestDatabase();
  const db = createPool(database.url, { size: 6 });
  const app = await createApp({ db, version: 'test', clock: () => new Date(), warnings: [] });
  await app.listen({ port: 0, host: '127.0.0.1' });
  return {
    app,
    db,
    close: async () => {
      await app.close();
      await db.end();
      await database.drop();
    },
  };
}
