import { shutdownPayloads, sitePayloads } from '@seatwell/contract';
import { type Action, actionFor, CATALOGUE, roleAllows } from '@seatwell/workflow';
import fc from 'fast-check';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { z } from 'zod';
import { HOSTILE, payloadsOf, spoil } from '../support/contract-arbitrary.ts';
import { PASSWORD, type SignedIn } from '../support/plant.ts';
import { openShutdown, type Shutdown } from '../support/shutdown.ts';
import { type Tale, taleTo } from '../support/tale.ts';

let shutdown: Shutdown;
let tale: Tale;
beforeAll(async () => {
  shutdown = await openShutdown();
  tale = await taleTo(shutdown, 'nipped up');
});
afterAll(() => shutdown.close());

const SCHEMAS: Readonly<Record<string, z.ZodType>> = { ...shutdownPayloads, ...sitePayloads };
const TYPES = Object.keys(SCHEMAS) as (keyof typeof CATALOGUE)[];
const ARBITRARIES = new Map(TYPES.map((type) => [type, payloadsOf(SCHEMAS[type] as z.ZodType)]));

/** Types of which a list can be sent, read from the routes of the server. */
let LISTS: Set<string>;
beforeAll(() => {
  const urls = shutdown.plant.app.declaredRoutes.map((route) => route.url);
  LISTS = new Set(urls.flatMap((url) => /\/lists\/(.+)$/.exec(url)?.[1] ?? []));
  expect(LISTS.size).toBeGreaterThan(5);
});

const rowOf = (payload: unknown, versionSeen: number) => ({
  jointId: tale.jointId,
  makeId: tale.makeId,
  versionSeen,
  payload,
});

const someCommand = fc.constantFrom(...TYPES).chain((type) =>
  fc.record({
    type: fc.constant(type),
    payload: ARBITRARIES.get(type) as fc.Arbitrary<unknown>,
    places: fc.array(fc.nat({ max: 30 }), { minLength: 1, maxLength: 4 }),
    bad: HOSTILE,
    spoilt: fc.constantFrom('payload', 'envelope', 'nothing'),
    asList: fc.boolean(),
  }),
);

function whoMay(action: Action): SignedIn {
  const { plant, technician, chargehand, inspector, engineer, coordinator, operations, witness } = shutdown;
  const people = [technician, chargehand, inspector, engineer, coordinator, operations, witness, plant.administrator];
  return people.find((each) => roleAllows(each.role, action)) ?? technician;
}

/** What an event brings about has its id in the payload as well, named first. */
function ownId(type: keyof typeof CATALOGUE, payload: unknown): string | null {
  const brings = /-(listed|recorded|held|raised|registered|planned|opened|granted|drafted|approved|entered)$/;
  if (!brings.test(type) || CATALOGUE[type].subject === 'joint' || CATALOGUE[type].subject === 'make') return null;
  if (type === 'calibration-recorded') return (payload as { toolId: string }).toolId;
  const first = Object.entries(payload as object)[0];
  return first?.[0].endsWith('Id') ? String(first[1]) : null;
}

const eventCount = async (): Promise<number> =>
  (await shutdown.plant.db.query('SELECT count(*) AS n FROM event')).rows[0].n;

/** Wrong secrets are tried here on purpose, and six of them lock an account. */
const unlock = () => shutdown.plant.db.query('UPDATE account SET failures = 0, locked_until = NULL');

it('answers any command with what it recorded or with a problem, and records nothing beside', async () => {
  const statuses = new Map<number, number>();
  await fc.assert(
    fc.asyncProperty(someCommand, async ({ type, payload, places, bad, spoilt, asList }) => {
      const site = CATALOGUE[type].stream === 'site';
      const list = asList && LISTS.has(type);
      const version = (await tale.state()).version;
      const said = spoilt === 'payload' ? spoil(payload, places, bad) : payload;
      const sound = {
        eventId: uuidv7(),
        v: 1,
        subjectId: ownId(type, payload) ?? (site ? uuidv7() : tale.jointId),
        ...(site || list ? {} : { makeId: tale.makeId }),
        deviceTime: shutdown.plant.now.toISOString(),
        performedBy: [],
        versionSeen: version,
        alreadyDone: false,
        signature: CATALOGUE[type].signed ? { secret: PASSWORD, meaning: 'so it is' } : null,
        ...(list ? { mode: 'each', rows: [rowOf(said, version), rowOf(payload, version)] } : { payload: said }),
      };
      const body = spoilt === 'envelope' ? spoil(sound, places, bad) : sound;
      const before = await eventCount();
      const path = site ? '/api/v1/site' : `/api/v1/shutdowns/${shutdown.shutdownId}`;
      const who = whoMay(actionFor(type, payload));
      const response = await who.agent
        .post(`${path}/${list ? 'lists' : 'commands'}/${type}`)
        .set('content-type', 'application/json')
        .send(JSON.stringify(body) ?? 'null');
      statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1);
      const after = await eventCount();
      if (response.status === 200) {
        // A list of which every row was refused is answered, and not recorded.
        expect(after).toBe(before + (response.body.recorded === 0 ? 0 : 1));
      } else {
        expect(response.status, JSON.stringify(response.body)).toBeLessThan(500);
        expect(response.type).toBe('application/problem+json');
        expect(response.body).toMatchObject({
          type: expect.stringMatching(/^urn:seatwell:problem:/),
          title: expect.stringMatching(/\S/),
          detail: expect.stringMatching(/\S/),
          errors: expect.any(Array),
        });
        expect(after).toBe(before);
      }
      if (response.status === 423 || response.status === 422) await unlock();
    }),
    { numRuns: 1500, interruptAfterTimeLimit: 15_000, markInterruptAsFailure: false },
  );
  // Both sides were reached: input that is refused unread, and input that got as far as the record.
  expect(statuses.get(400) ?? 0).toBeGreaterThan(20);
  expect(statuses.get(200) ?? 0).toBeGreaterThan(5);
});
