import type { BatchAnswer } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { acceptedList, engage, listCommand, PASSWORD, type SignedIn } from './support/plant.ts';
import { openShutdown, type Shutdown } from './support/shutdown.ts';
import { type Tale, taleTo } from './support/tale.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

const target = () => ({
  basis: 'calculated' as const,
  gasketDataId: shutdown.gasketDataId,
  lubricantId: shutdown.lubricantId,
  boltStress_MPa: null,
  acceptedShortfall: null,
});

const rowOf = async (tale: Tale) => ({
  jointId: tale.jointId,
  makeId: tale.makeId,
  versionSeen: (await tale.state()).version,
  payload: target(),
});

const approve = async (tales: readonly Tale[], options: Parameters<typeof listCommand>[5] = {}) =>
  listCommand(
    shutdown.plant,
    shutdown.engineer,
    shutdown.shutdownId,
    'target-approved',
    await Promise.all(tales.map(rowOf)),
    options,
  );

const three = async (...points: ('listed' | 'procedure assigned')[]) => {
  const tales: Tale[] = [];
  for (const point of points) tales.push(await taleTo(shutdown, point));
  return tales;
};

const stages = (tales: readonly Tale[]) => Promise.all(tales.map((tale) => tale.stage()));

describe('a list under one signature', () => {
  it('is all or nothing where it says so, and names every joint that stops it', async () => {
    const tales = await three('procedure assigned', 'listed', 'listed');
    const response = await approve(tales);
    expect(response.status).toBe(422);
    const stopped = response.body.errors.filter(
      (error: { code: string }) => error.code === 'engineered.procedure-first',
    );
    expect(stopped.map((error: { joint: string }) => error.joint)).toEqual(
      tales.slice(1).map((tale) => tale.joint.tag),
    );
    expect(await stages(tales)).toEqual(['planned', 'planned', 'planned']);
  });

  it('takes each that passes where it says so, and answers why the others did not', async () => {
    const tales = await three('procedure assigned', 'listed', 'procedure assigned');
    const answer = acceptedList(await approve(tales, { mode: 'each' }));
    expect(answer.recorded).toBe(2);
    expect(answer.refused.map((row) => row.joint)).toEqual([tales[1]?.joint.tag]);
    expect(answer.refused[0]?.failed.map((rule) => rule.rule)).toContain('engineered.procedure-first');
    expect(await stages(tales)).toEqual(['engineered', 'planned', 'engineered']);
  });

  it('is one event whose rows carry the targets, and can be sent again for the same answer', async () => {
    const tales = await three('procedure assigned', 'procedure assigned');
    const said = { eventId: uuidv7(), at: shutdown.plant.now.toISOString() };
    const rows = await Promise.all(tales.map(rowOf));
    const send = () =>
      listCommand(shutdown.plant, shutdown.engineer, shutdown.shutdownId, 'target-approved', rows, said);
    const first = acceptedList(await send());
    expect(acceptedList(await send())).toEqual(first);
    const { rows: events } = await shutdown.plant.db.query(
      'SELECT row_count, signature IS NOT NULL AS signed, rows_root IS NOT NULL AS rooted FROM event WHERE event_id = $1',
      [said.eventId],
    );
    expect(events).toEqual([{ row_count: 2, signed: true, rooted: true }]);
    const other = await listCommand(
      shutdown.plant,
      shutdown.engineer,
      shutdown.shutdownId,
      'target-approved',
      rows.slice(1),
      said,
    );
    expect(other.body.type).toBe('urn:seatwell:problem:event-id-reused');
  });

  it('with a joint that has moved on leaves that one out, or stops', async () => {
    const tales = await three('procedure assigned', 'procedure assigned');
    const rows = await Promise.all(tales.map(rowOf));
    await tales[1]?.tell('hold-placed');
    const send = (mode: 'all' | 'each') =>
      listCommand(shutdown.plant, shutdown.engineer, shutdown.shutdownId, 'target-approved', rows, { mode });
    expect((await send('all')).status).toBe(422);
    const answer = acceptedList(await send('each'));
    expect(answer.recorded).toBe(1);
    expect(answer.refused).toMatchObject([{ joint: tales[1]?.joint.tag, failed: [{ rule: 'stale' }] }]);
  });

  it('of more than 500 rows becomes a job with a result for each joint', async () => {
    const [one] = await three('procedure assigned');
    const [other] = await three('listed');
    if (!one || !other) throw new Error('Two joints are needed.');
    // The same two joints over and over: the first row counts, the others find what it left.
    const rows = await Promise.all(Array.from({ length: 501 }, (_, index) => rowOf(index % 2 === 0 ? one : other)));
    const started = acceptedList(
      await listCommand(shutdown.plant, shutdown.engineer, shutdown.shutdownId, 'target-approved', rows, {
        mode: 'each',
      }),
    );
    expect(started).toMatchObject({ recorded: 0, sequence: null });
    const ended = await jobOf(shutdown.engineer, started.jobId ?? '');
    expect(ended).toMatchObject({ state: 'done', total: 501, done: 501 });
    const result = ended.result as BatchAnswer;
    expect(result.recorded).toBe(251);
    expect(result.refused).toHaveLength(250);
    expect(new Set(result.refused.map((row) => row.joint))).toEqual(new Set([other.joint.tag]));
    expect(await stages([one, other])).toEqual(['engineered', 'planned']);
    // Nobody else looks into it.
    expect((await shutdown.inspector.agent.get(`/api/v1/jobs/${started.jobId}`)).status).toBe(404);
    const { rows: kept } = await shutdown.plant.db.query('SELECT input::text AS input FROM job WHERE job_id = $1', [
      started.jobId,
    ]);
    expect(kept[0].input).not.toContain('a long test secret');
  });
});

async function jobOf(who: SignedIn, jobId: string) {
  for (;;) {
    const { body } = await who.agent.get(`/api/v1/jobs/${jobId}`).expect(200);
    if (body.state === 'done' || body.state === 'failed') return body;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

const typeOf = (response: { body: { type: string } }) => response.body.type.replace('urn:seatwell:problem:', '');

describe('a signature', () => {
  it('is asked for, and a wrong secret signs nothing', async () => {
    const tale = await taleTo(shutdown, 'procedure assigned');
    expect(typeOf(await tale.say('target-approved', { secret: null }))).toBe('signature-missing');
    expect(typeOf(await tale.say('target-approved', { secret: 'not my secret' }))).toBe('wrong-secret');
    expect(await tale.stage()).toBe('planned');
    await tale.tell('target-approved');
  });

  it('is the signer’s own: the secret of another account does not sign', async () => {
    const other = await engage(shutdown.plant, 'engineer', 'Eva Gineer');
    await other.agent
      .put('/api/v1/session/password')
      .send({ current: 'a long test secret', next: 'quite another secret' })
      .expect(204);
    const tale = await taleTo(shutdown, 'procedure assigned');
    expect(typeOf(await tale.say('target-approved', { by: other }))).toBe('wrong-secret');
    await tale.tell('target-approved', { by: other, secret: 'quite another secret' });
  });

  it('binds who, in which role, what was meant and what was seen', async () => {
    const tale = await taleTo(shutdown, 'engineered');
    const { rows } = await shutdown.plant.db.query('SELECT signature FROM event WHERE event_id = $1', [
      tale.eventId('target-approved'),
    ]);
    expect(rows[0].signature).toMatchObject({
      personId: shutdown.engineer.personId,
      role: 'engineer',
      meaning: '→ engineered',
      contentHash: expect.stringMatching(/^[0-9a-f]{64}$/),
      nameCommitment: expect.stringMatching(/^[0-9a-f]{64}$/),
    });
  });

  it('locks the account after six wrong secrets, for signing and signing in alike', async () => {
    const clumsy = await engage(shutdown.plant, 'engineer', 'Clum Sy');
    const tale = await taleTo(shutdown, 'procedure assigned');
    for (let wrong = 1; wrong <= 6; wrong += 1)
      expect(typeOf(await tale.say('target-approved', { by: clumsy, secret: 'wrong' }))).toBe('wrong-secret');
    const right = await tale.say('target-approved', { by: clumsy });
    expect(right.status).toBe(423);
    expect(typeOf(right)).toBe('locked-out');
    const signIn = { email: clumsy.email, password: PASSWORD };
    expect(typeOf(await shutdown.plant.administrator.agent.post('/api/v1/session').send(signIn))).toBe('locked-out');
    expect(await tale.stage()).toBe('planned');
  });
});
