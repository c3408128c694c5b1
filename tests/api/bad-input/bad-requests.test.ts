import supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { command, engage, type SignedIn, siteCommand } from '../support/plant.ts';
import { openShutdown, type Shutdown } from '../support/shutdown.ts';
import { type Tale, taleTo } from '../support/tale.ts';
import { openingBy } from '../support/work.ts';

let shutdown: Shutdown;
let tale: Tale;
let before: number;
beforeAll(async () => {
  shutdown = await openShutdown();
  tale = await taleTo(shutdown, 'released');
});
afterAll(() => shutdown.close());

const eventCount = async (): Promise<number> =>
  (await shutdown.plant.db.query('SELECT count(*) AS n FROM event')).rows[0].n;
beforeEach(async () => {
  before = await eventCount();
});
afterEach(async () => {
  expect(await eventCount()).toBe(before);
});

const opened = (more: object = {}, payload: object = {}) => ({
  eventId: uuidv7(),
  v: 1,
  subjectId: tale.jointId,
  makeId: tale.makeId,
  deviceTime: shutdown.plant.now.toISOString(),
  payload: { ...openingBy(shutdown), ...payload },
  ...more,
});

const address = () => `/api/v1/shutdowns/${shutdown.shutdownId}/commands/opened`;
const send = (body: object, who: SignedIn = shutdown.technician) => who.agent.post(address()).send(body);

const problem = (code: string, status: number) => ({
  status,
  type: 'application/problem+json',
  body: {
    type: `urn:seatwell:problem:${code}`,
    title: expect.stringMatching(/\S/),
    status,
    detail: expect.stringMatching(/\S/),
    instance: expect.stringMatching(/^\//),
    errors: expect.any(Array),
  },
});

const deep = (depth: number): string => `${'{"down":'.repeat(depth)}1${'}'.repeat(depth)}`;

describe('a command with a field that cannot be', () => {
  const remark = (text: string) => () => opened({}, { remark: text });
  const cases: Record<string, [() => object, string]> = {
    'of the wrong type': [() => opened({}, { cautionShown: 'yes' }), 'body.payload.cautionShown'],
    'that nobody asked for': [() => opened({}, { sealed: true }), 'body.payload'],
    'left out': [() => opened({}, { openEndsCovered: undefined }), 'body.payload.openEndsCovered'],
    'of a huge text': [remark('x'.repeat(5_000)), 'body.payload.remark'],
    'of an event id that is none': [() => opened({ eventId: '1; DROP TABLE event' }), 'body.eventId'],
    'of a device time that is none': [() => opened({ deviceTime: 'yesterday' }), 'body.deviceTime'],
    'of a time before there were plants': [() => opened({ deviceTime: '0001-01-01T00:00:00Z' }), 'body.deviceTime'],
    'of a version that does not exist': [() => opened({ v: 2 }), 'body.v'],
  };
  it.each(Object.entries(cases))('%s says where and why', async (_name, [body, path]) => {
    const response = await send(body());
    expect(response).toMatchObject(problem('bad-input', 400));
    expect(response.body.errors[0]).toMatchObject({ path, message: expect.stringMatching(/\S/) });
  });

  it('of a NUL character is refused, not stored without it', async () => {
    expect(await send(opened({}, { remark: 'a\u0000b' }))).toMatchObject(problem('bad-input', 400));
  });

  it('of half a character is refused, not stored as another one', async () => {
    expect(await send(opened({}, { remark: 'a\ud800b' }))).toMatchObject(problem('bad-input', 400));
  });

  it('of an unknown joint, make, shutdown or event type is not found', async () => {
    expect(await send(opened({ subjectId: uuidv7() }))).toMatchObject(problem('not-found', 404));
    expect(await send(opened({ makeId: uuidv7() }))).toMatchObject(problem('not-found', 404));
    const { agent } = shutdown.technician;
    const elsewhere = await agent.post(`/api/v1/shutdowns/${uuidv7()}/commands/opened`).send(opened());
    expect(elsewhere).toMatchObject(problem('not-found', 404));
    const closed = await agent.post(address().replace('opened', 'exploded')).send(opened());
    expect(closed).toMatchObject(problem('not-found', 404));
    const odd = await agent.post(address().replace(shutdown.shutdownId, 'spring')).send(opened());
    expect(odd).toMatchObject(problem('bad-input', 400));
  });
});

it('a command about one thing that says the id of another is refused', async () => {
  const areaId = uuidv7();
  const area = { areaId, code: 'U77', name: 'Unit 77' };
  const { plant, coordinator, shutdownId } = shutdown;
  const response = await command(plant, coordinator, shutdownId, 'area-listed', uuidv7(), area);
  expect(response).toMatchObject(problem('bad-input', 400));
  expect(response.body.errors).toMatchObject([{ path: 'subjectId', code: 'other-subject' }]);
});

it('a calibration is recorded about its tool, and nothing else', async () => {
  const { plant, inspector, wrenchId } = shutdown;
  const calibrationId = uuidv7();
  const calibration = {
    calibrationId,
    toolId: wrenchId,
    calibratedOn: '2027-03-01',
    validThrough: '2028-03-01',
    certificate: null,
    certificateNumber: 'C-TW-1-2',
    provisional: false,
    pairs: [],
  };
  const response = await siteCommand(plant, inspector, 'calibration-recorded', calibrationId, calibration);
  expect(response).toMatchObject(problem('bad-input', 400));
  expect(response.body.errors).toMatchObject([{ path: 'subjectId', code: 'other-subject' }]);
});

describe('a body', () => {
  const post = (body: string | Buffer, type = 'application/json') =>
    shutdown.technician.agent.post(address()).set('content-type', type).send(body);

  it('that is no JSON', async () => {
    expect(await post('{"eventId":')).toMatchObject(problem('bad-input', 400));
  });
  it('that is empty', async () => {
    expect(await post('')).toMatchObject(problem('bad-input', 400));
  });
  it('that is a list', async () => {
    expect(await post('[]')).toMatchObject(problem('bad-input', 400));
  });
  it('nested a hundred thousand deep', async () => {
    const response = await post(deep(100_000));
    expect(response).toMatchObject(problem('bad-input', 400));
  });
  it('that would change the prototype of everything', async () => {
    expect(await post('{"__proto__":{"admin":true}}')).toMatchObject(problem('bad-input', 400));
  });
  it('of another content type', async () => {
    expect(await post('eventId=1', 'application/x-www-form-urlencoded')).toMatchObject(
      problem('media-type-refused', 415),
    );
    expect(await post(JSON.stringify(opened()), 'text/plain')).toMatchObject(problem('bad-input', 400));
  });
  it('larger than a megabyte', async () => {
    expect(await post(JSON.stringify(opened({}, { remark: 'x'.repeat(2_000_000) })))).toMatchObject(
      problem('too-large', 413),
    );
  });
});

describe('a request from another site', () => {
  const from = (headers: Record<string, string>) =>
    shutdown.technician.agent.post(address()).set(headers).send(opened());

  it('is refused by its Origin', async () => {
    expect(await from({ origin: 'https://evil.example' })).toMatchObject(problem('origin-refused', 403));
    expect(await from({ origin: 'null' })).toMatchObject(problem('origin-refused', 403));
  });

  it('is refused by what the browser says of where it came from', async () => {
    for (const site of ['cross-site', 'same-site'])
      expect(await from({ 'sec-fetch-site': site })).toMatchObject(problem('origin-refused', 403));
  });
});

describe('a session', () => {
  it('that has expired is none', async () => {
    const leaver = await engage(shutdown.plant, 'technician', 'Lea Ver');
    await shutdown.plant.db.query("UPDATE session SET expires_at = now() - interval '1 second' WHERE account_id = $1", [
      leaver.accountId,
    ]);
    before = await eventCount();
    expect(await send(opened(), leaver)).toMatchObject(problem('not-signed-in', 401));
  });

  it('with a cookie of somebody’s invention is none', async () => {
    const stranger = supertest(shutdown.plant.app.server);
    const response = await stranger.post(address()).set('cookie', 'seatwell-session=../../etc').send(opened());
    expect(response).toMatchObject(problem('not-signed-in', 401));
  });
});
