import type { Payload, ReviewsAnswer } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, refusedBy, type SignedIn } from '../support/plant.ts';
import { openShutdown, type Shutdown } from '../support/shutdown.ts';
import { type Tale, taleTo } from '../support/tale.ts';

let shutdown: Shutdown;

beforeAll(async () => {
  shutdown = await openShutdown();
});

afterAll(async () => {
  await shutdown.plant.close();
});

/** Read before the pack was released: nobody can take that back, so it is kept. */
async function kept(tale: Tale): Promise<string> {
  const eventId = uuidv7();
  const answer = accepted(await tale.say('test-reading', { eventId, alreadyDone: true }));
  expect(answer.disposition).toBe('needs-review');
  return eventId;
}

const settle = (
  { packId }: Tale,
  by: SignedIn,
  eventId: string,
  outcome: Payload<'review-settled'>['outcome'],
  punchId: string | null = null,
) =>
  command(shutdown.plant, by, shutdown.shutdownId, 'review-settled', packId, {
    eventId,
    outcome,
    reason: 'Asked the test crew',
    punchId,
  });

const listed = async ({ packId }: Tale): Promise<ReviewsAnswer['rows']> => {
  const { body } = await shutdown.engineer.agent.get(`/api/v1/shutdowns/${shutdown.shutdownId}/reviews`).expect(200);
  return (body as ReviewsAnswer).rows.filter((row) => row.pack?.packId === packId);
};

const readings = async ({ packId }: Tale): Promise<number> => {
  const { rows } = await shutdown.plant.db.query(
    'SELECT jsonb_array_length(readings) AS count FROM test_pack WHERE pack_id = $1',
    [packId],
  );
  return rows[0].count;
};

describe('a reading of a pack that failed a rule', () => {
  it('waits for somebody entitled, counts for nothing meanwhile, and is not settled by who took it', async () => {
    const tale = await taleTo(shutdown, 'checked');
    const eventId = await kept(tale);
    expect(await readings(tale)).toBe(0);
    expect(await listed(tale)).toMatchObject([{ eventId, type: 'test-reading', joint: null }]);
    expect(refusedBy(await settle(tale, shutdown.inspector, eventId, 'accept'))).toEqual([
      'review-settled.not-own-work',
    ]);
    expect((await settle(tale, shutdown.technician, eventId, 'accept')).status).toBe(403);
  });

  it('accepted, it counts', async () => {
    const tale = await taleTo(shutdown, 'checked');
    const eventId = await kept(tale);
    accepted(await settle(tale, shutdown.engineer, eventId, 'accept'));
    expect(await readings(tale)).toBe(1);
    expect(await listed(tale)).toEqual([]);
    expect(refusedBy(await settle(tale, shutdown.engineer, eventId, 'accept'))).toEqual(['review-settled.in-review']);
  });

  it('rejected as not done, it never was', async () => {
    const tale = await taleTo(shutdown, 'checked');
    const eventId = await kept(tale);
    accepted(await settle(tale, shutdown.engineer, eventId, 'reject-as-not-done'));
    expect(await readings(tale)).toBe(0);
    expect(await listed(tale)).toEqual([]);
  });

  it('accepted with a punch item, the item stands at the pack', async () => {
    const tale = await taleTo(shutdown, 'checked');
    const eventId = await kept(tale);
    expect(refusedBy(await settle(tale, shutdown.engineer, eventId, 'accept-with-punch-item'))).toEqual([
      'review-settled.punch-named',
    ]);
    const punchId = uuidv7();
    accepted(await settle(tale, shutdown.engineer, eventId, 'accept-with-punch-item', punchId));
    const { rows } = await shutdown.plant.db.query('SELECT pack_id FROM punch_item WHERE punch_id = $1', [punchId]);
    expect(rows).toEqual([{ pack_id: tale.packId }]);
  });
});

describe('a reading from a device whose clock nobody trusts', () => {
  it('waits for review, though every rule is met', async () => {
    const tale = await taleTo(shutdown, 'checked');
    await tale.tell('pack-released');
    const answer = accepted(
      await tale.say('test-reading', { at: new Date(shutdown.plant.now.getTime() + 3_600_000).toISOString() }),
    );
    expect(answer.disposition).toBe('needs-review');
    expect((await listed(tale))[0]?.rules.map((rule) => rule.code)).toEqual(['time.device-clock']);
  });
});
