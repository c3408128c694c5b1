import type { ProblemBody } from '@seatwell/contract';
import supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listen } from './support/live-stream.ts';
import {
  accepted,
  command,
  engage,
  openPlant,
  PASSWORD,
  type Plant,
  type SignedIn,
  siteCommand,
} from './support/plant.ts';
import { springShutdown } from './support/sample-plant.ts';

const TOKEN = 'a token of sixteen and more';
const lines: string[] = [];
let plant: Plant;
let coordinator: SignedIn;
let inspector: SignedIn;
let shutdownId: string;

beforeAll(async () => {
  plant = await openPlant(undefined, {
    metricsToken: TOKEN,
    log: { level: 'trace', stream: { write: (line) => lines.push(line) } },
  });
  coordinator = await engage(plant, 'coordinator', 'Cora Dinator');
  inspector = await engage(plant, 'inspector', 'Ina Spector');
  shutdownId = uuidv7();
  accepted(await command(plant, coordinator, shutdownId, 'shutdown-opened', shutdownId, springShutdown));
});
afterAll(() => plant.close());

const anyone = () => supertest(plant.app.server);
const metrics = async (): Promise<string> =>
  (await anyone().get('/metrics').set('authorization', `Bearer ${TOKEN}`).expect(200)).text;
/** The value of a series; 0 while it has none. */
async function figure(series: string): Promise<number> {
  const line = (await metrics()).split('\n').find((each) => each.startsWith(`${series} `));
  return Number(line?.slice(series.length + 1) ?? 0);
}

describe('the metrics', () => {
  it('are there for whoever has the token, and nobody else', async () => {
    await anyone().get('/metrics').expect(401);
    await anyone().get('/metrics').set('authorization', `Bearer ${TOKEN}x`).expect(401);
    await coordinator.agent.get('/metrics').expect(401);
    expect(await metrics()).toContain('seatwell_database_up 1');
  });

  it('are not there at all where nobody asked for them', async () => {
    const other = await openPlant();
    await supertest(other.app.server).get('/metrics').expect(404);
    await other.close();
  });

  it('count requests by route, not by address', async () => {
    const series = 'seatwell_requests_total{method="GET",route="/api/v1/people/:personId",status="404"}';
    const before = await figure(series);
    await coordinator.agent.get(`/api/v1/people/${uuidv7()}`).expect(404);
    expect(await figure(series)).toBe(before + 1);
  });

  it('count commands by outcome, and the rules that stopped them', async () => {
    const areaId = uuidv7();
    const eventId = uuidv7();
    const payload = { areaId, code: 'A1', name: 'A1' };
    accepted(await command(plant, coordinator, shutdownId, 'area-listed', areaId, payload, { eventId }));
    expect(await figure('seatwell_commands_total{type="area-listed",outcome="applied"}')).toBe(1);
    const again = await command(
      plant,
      coordinator,
      shutdownId,
      'area-listed',
      areaId,
      { ...payload, name: 'B' },
      { eventId },
    );
    expect(again.status).toBe(409);
    expect(await figure('seatwell_commands_total{type="area-listed",outcome="event-id-reused"}')).toBe(1);
  });

  it('count wrong sign-ins and those that were locked out', async () => {
    const { email } = await engage(plant, 'technician', 'Theo Technician');
    const signIn = (password: string) => anyone().post('/api/v1/session').send({ email, password });
    for (let wrong = 0; wrong < 6; wrong += 1) await signIn('not this one at all').expect(401);
    await signIn(PASSWORD).expect(423);
    expect(await figure('seatwell_sign_ins_total{outcome="wrong-sign-in"}')).toBe(6);
    expect(await figure('seatwell_sign_ins_total{outcome="locked-out"}')).toBe(1);
    expect(await figure('seatwell_locked_accounts')).toBe(1);
  });

  it('count live streams while they are open', async () => {
    const stream = await listen(plant, coordinator, `/api/v1/shutdowns/${shutdownId}/live`);
    await stream.until(() => stream.heads().length > 0);
    expect(await figure('seatwell_live_streams')).toBe(1);
    stream.close();
    await expect.poll(() => figure('seatwell_live_streams')).toBe(0);
  });

  it('tell the database’s size and connections', async () => {
    expect(await figure('seatwell_database_size_bytes')).toBeGreaterThan(1_000_000);
    expect(await figure('seatwell_database_connections{state="idle"}')).toBeGreaterThan(0);
  });

  it('hold no name, address or id', async () => {
    const text = await metrics();
    for (const personal of ['Dinator', '@plant.example', coordinator.personId, coordinator.accountId, shutdownId])
      expect(text.includes(personal), personal).toBe(false);
  });
});

describe('the log', () => {
  const entries = () => lines.map((line) => JSON.parse(line) as Record<string, unknown>);

  it('has a line for each answer, with the request’s id and the event’s', async () => {
    const areaId = uuidv7();
    const eventId = uuidv7();
    const answer = await command(
      plant,
      coordinator,
      shutdownId,
      'area-listed',
      areaId,
      { areaId, code: 'A2', name: 'A2' },
      { eventId },
    );
    await expect
      .poll(() => entries().filter((entry) => entry['eventId'] === eventId))
      .toMatchObject([
        {
          reqId: answer.headers['x-request-id'],
          method: 'POST',
          route: '/api/v1/shutdowns/:shutdownId/commands/area-listed',
          status: 200,
          eventType: 'area-listed',
          accountId: coordinator.accountId,
        },
      ]);
  });

  it('gives a refusal the id by which the log knows it', async () => {
    const { body } = await anyone().get('/api/v1/people').expect(401);
    const { requestId } = body as ProblemBody & { requestId: string };
    await expect.poll(() => entries().filter((entry) => entry['reqId'] === requestId)).toMatchObject([{ status: 401 }]);
  });

  it('holds no secret, cookie, name or address, whatever was sent', async () => {
    const said = {
      password: 'a password nobody logs',
      secret: 'a signing secret nobody logs',
      name: 'Nameless Person',
      search: 'a-word-in-an-address',
      broken: 'a broken body',
    };
    const { email } = await engage(plant, 'inspector', 'Quiet Inspector');
    await anyone().post('/api/v1/session').send({ email, password: said.password }).expect(401);
    await anyone()
      .post('/api/v1/session')
      .set('content-type', 'application/json')
      .send(`{"email":"${said.broken}`)
      .expect(400);
    await inspector.agent
      .put('/api/v1/session/password')
      .send({ current: said.secret, next: said.password })
      .expect(422);
    const personId = uuidv7();
    accepted(
      await siteCommand(plant, plant.administrator, 'person-registered', personId, {
        personId,
        name: said.name,
        company: 'Contractor',
        badge: null,
        trade: null,
      }),
    );
    const signed = { holdId: uuidv7(), reason: 'none' };
    await command(plant, inspector, shutdownId, 'hold-released', uuidv7(), signed, { secret: said.secret });
    await inspector.agent.get(`/api/v1/shutdowns/${shutdownId}/joints?search=${said.search}`);
    // An error that nobody foresaw is logged with its stack, and without the values of the row.
    const fresh = await inspector.agent.get('/api/v1/session').expect(200);
    expect(fresh.body.email).toBe(inspector.email);
    await expect.poll(() => lines.length).toBeGreaterThan(20);
    const text = lines.join('\n');
    const { rows } = await plant.db.query("SELECT encode(token_hash, 'hex') AS hash FROM session");
    const secrets = [...Object.values(said), PASSWORD, email, 'Quiet', 'cookie', 'seatwell-session'];
    for (const secret of [...secrets, ...rows.map((row) => row.hash)])
      expect(text.includes(secret), secret).toBe(false);
  });

  it('says of an error that nobody foresaw what it was, without the values in it', async () => {
    const query = plant.db.query.bind(plant.db);
    const failing = Object.assign(new Error('duplicate key value'), {
      detail: 'Key (email)=(ada@plant.example) exists',
    });
    plant.db.query = (async () => {
      throw failing;
    }) as never;
    const response = await anyone().get('/api/v1/first-visit');
    plant.db.query = query;
    expect(response.status).toBe(500);
    const { requestId } = response.body as { requestId: string };
    const own = () => lines.filter((line) => line.includes(requestId));
    await expect.poll(() => own().length).toBe(2);
    expect(own().join('\n')).toContain('duplicate key value');
    expect(own().join('\n')).not.toContain('ada@plant.example');
  });
});
