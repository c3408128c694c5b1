import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, refusedBy } from './support/plant.ts';
import { openShutdown, type Shutdown } from './support/shutdown.ts';
import { taleTo } from './support/tale.ts';
import { nippedUp, openingBy, wait } from './support/work.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

const minutesAgo = (minutes: number) => new Date(shutdown.plant.now.getTime() - minutes * 60_000).toISOString();

/** One zero-energy check only. */
const checkedOnce = () => ({ zeroEnergyChecks: openingBy(shutdown).zeroEnergyChecks.slice(0, 1) });

describe('a fact that a rule stops', () => {
  it('is answered with the rules and not kept; said to be done already, the same command is kept in review', async () => {
    const tale = await taleTo(shutdown, 'released');
    const eventId = uuidv7();
    const said = { change: checkedOnce(), eventId };
    expect(refusedBy(await tale.say('opened', said))).toEqual(['open.zero-energy-checks']);
    const answer = await tale.tell('opened', { ...said, alreadyDone: true });
    expect(answer).toMatchObject({ eventId, disposition: 'needs-review', stage: 'released' });
    expect(answer.failed.map((rule) => rule.rule)).toEqual(['open.zero-energy-checks']);
    expect((await tale.make()).waiting).toMatchObject([{ eventId, codes: ['open.zero-energy-checks'] }]);
  });

  it('makes what depends on it wait behind it, until it is accepted and all take their places', async () => {
    const tale = await taleTo(shutdown, 'released');
    const opened = await tale.tell('opened', { change: checkedOnce(), alreadyDone: true });
    expect(refusedBy(await tale.say('faces-inspected'))).toEqual(['faces.open-first']);
    await tale.tell('faces-inspected', { alreadyDone: true });
    await tale.tell('nipped-up', { alreadyDone: true });
    const waiting = (await tale.make()).waiting;
    expect(waiting.map((fact) => [fact.type, fact.behind])).toEqual([
      ['opened', null],
      ['faces-inspected', opened.eventId],
      ['nipped-up', opened.eventId],
    ]);
    const settle = (eventId: string) => tale.tell('review-settled', { change: { eventId } });
    await settle(opened.eventId);
    expect(await tale.stage()).toBe('open');
    await settle(waiting[1]?.eventId ?? '');
    await settle(waiting[2]?.eventId ?? '');
    expect(await tale.make()).toMatchObject({ stage: 'nipped-up', waiting: [] });
  });

  it('rejected as not done counts for nothing, and the work is told anew', async () => {
    const tale = await taleTo(shutdown, 'released');
    await tale.tell('opened', { change: checkedOnce(), alreadyDone: true });
    await tale.tell('review-settled', { change: { outcome: 'reject-as-not-done' } });
    expect(await tale.make()).toMatchObject({ stage: 'released', waiting: [] });
    await tale.goOn('faces accepted', 'released');
  });

  it('accepted with a punch item raises it on the joint', async () => {
    const tale = await taleTo(shutdown, 'released');
    await tale.tell('opened', { change: checkedOnce(), alreadyDone: true });
    const punchId = uuidv7();
    const reason = 'Second check was made and not named';
    await tale.tell('review-settled', { change: { outcome: 'accept-with-punch-item', punchId, reason } });
    expect(await tale.stage()).toBe('open');
    const { rows } = await shutdown.plant.db.query(
      'SELECT punch_id, category, text FROM punch_item WHERE joint_id = $1',
      [tale.jointId],
    );
    expect(rows).toEqual([{ punch_id: punchId, category: 'B', text: reason }]);
  });

  it('is never let through by being late: a decision about it is refused whatever it says of being done', async () => {
    const tale = await taleTo(shutdown, 'procedure assigned');
    expect(refusedBy(await tale.say('break-released', { alreadyDone: true }))).toEqual(['released.engineered-first']);
  });
});

describe('the time of the work', () => {
  it('of a device whose clock runs ahead is doubtful, and the fact needs review', async () => {
    const tale = await taleTo(shutdown, 'released');
    const answer = await tale.tell('opened', { at: minutesAgo(-20) });
    expect(answer).toMatchObject({ disposition: 'needs-review', stage: 'released' });
    const [fact] = (await tale.make()).waiting;
    expect(fact?.codes).toEqual(['time.device-clock']);
    await tale.tell('review-settled');
    expect(await tale.stage()).toBe('open');
  });

  it('is put right by the measured offset of the device', async () => {
    const tale = await taleTo(shutdown, 'released');
    const at = minutesAgo(-20);
    const { plant, technician, shutdownId } = shutdown;
    const response = await technician.agent.post(`/api/v1/shutdowns/${shutdownId}/commands/opened`).send({
      eventId: uuidv7(),
      v: 1,
      subjectId: tale.jointId,
      makeId: tale.makeId,
      deviceTime: at,
      clockOffset_ms: -20 * 60_000,
      payload: openingBy(shutdown),
    });
    expect(accepted(response).disposition).toBe('applied');
    expect((await tale.make()).openedAt).toBe(plant.now.toISOString());
  });

  it('orders what arrives late: the fold is the same as if all had been told in time', async () => {
    const told = await taleTo(shutdown, 'first pass');
    const late = await taleTo(shutdown, 'faces accepted');
    wait(shutdown, 60);
    await late.tell('pass-recorded', { alreadyDone: true });
    expect((await late.make()).waiting).toHaveLength(1);
    await late.tell('nipped-up', { payload: nippedUp(shutdown), at: minutesAgo(50) });
    expect((await late.make()).waiting).toMatchObject([{ type: 'pass-recorded', missing: null }]);
    await late.tell('review-settled');
    const [a, b] = [await told.make(), await late.make()];
    expect(b).toMatchObject({ stage: a.stage, nextPass: a.nextPass, waiting: [], fitted: a.fitted });
  });
});

describe('a decision', () => {
  it('on a joint that has moved on is refused, and the answer says how far', async () => {
    const tale = await taleTo(shutdown, 'engineered');
    const seen = (await tale.state()).version;
    await tale.tell('hold-placed');
    await tale.tell('hold-released');
    const response = await tale.say('break-released', { versionSeen: seen });
    expect(response.status).toBe(409);
    expect(response.body).toMatchObject({
      type: 'urn:seatwell:problem:stale-decision',
      errors: [{ path: 'versionSeen', message: tale.joint.tag, limit: seen + 2 }],
    });
    const changed = response.body.changed.map((event: { type: string }) => event.type);
    expect(changed).toEqual(['hold-placed', 'hold-released']);
    const without = await tale.say('break-released', { versionSeen: null });
    expect(without.body.type).toBe('urn:seatwell:problem:stale-decision');
  });

  it('of two people at once on the same version is taken once', async () => {
    const tale = await taleTo(shutdown, 'proven');
    const versionSeen = (await tale.state()).version;
    const answers = await Promise.all([
      tale.say('hand-over-offered', { versionSeen }),
      tale.say('hand-over-offered', { versionSeen, change: { exceptions: ['Paint'] } }),
      tale.say('revoked', { versionSeen }),
    ]);
    expect(answers.map((answer) => answer.status).sort()).toEqual([200, 409, 409]);
    expect((await tale.state()).version).toBe(versionSeen + 1);
  });

  it('is revoked by signature and with a reason: the proof is gone and the joint is checked as before', async () => {
    const tale = await taleTo(shutdown, 'proven');
    await tale.tell('revoked');
    expect(await tale.make()).toMatchObject({ stage: 'checked', provenAt: null });
    expect(refusedBy(await tale.say('revoked'))).toEqual(['revoked.decision-only']);
    await tale.tell('proven');
    expect(await tale.stage()).toBe('proven');
  });
});

describe('facts of two people on one joint at once', () => {
  it('are both kept, one after the other', async () => {
    const tale = await taleTo(shutdown, 'open');
    const raise = (category: 'B' | 'C', text: string, by: Shutdown['mate']) => {
      const punchId = uuidv7();
      const payload = { punchId, category, text, jointId: tale.jointId, packId: null, systemId: null, owner: null };
      return command(shutdown.plant, by, shutdown.shutdownId, 'punch-raised', punchId, payload);
    };
    const placed = await Promise.all([
      tale.say('hold-placed'),
      tale.say('hold-placed', { by: shutdown.inspector }),
      raise('B', 'Paint', shutdown.technician),
      raise('C', 'Label', shutdown.mate),
    ]);
    expect(placed.map((answer) => answer.status)).toEqual([200, 200, 200, 200]);
    expect((await tale.state()).holds).toHaveLength(2);
  });

  it('of the same pass count once: the second is out of order', async () => {
    const tale = await taleTo(shutdown, 'nipped up');
    const both = await Promise.all([
      tale.say('pass-recorded', { change: { pass: 1 } }),
      tale.say('pass-recorded', { change: { pass: 1 }, by: shutdown.mate }),
    ]);
    expect(both.map((answer) => answer.status).sort()).toEqual([200, 422]);
    expect(both.flatMap((answer) => (answer.status === 422 ? refusedBy(answer) : []))).toEqual(['passes.in-order']);
    expect((await tale.make()).passes).toHaveLength(1);
  });
});

describe('a correction under a signature', () => {
  it('shows the check as superseded and falls back before it; both stay on record', async () => {
    const tale = await taleTo(shutdown, 'checked');
    const checkedId = tale.eventId('checked');
    const opened = { ...openingBy(shutdown), remark: 'The drain was opened first' };
    await tale.tell('corrected', { change: { payload: opened as unknown as Record<string, unknown> } });
    expect(await tale.make()).toMatchObject({
      stage: 'tight',
      checkedAt: null,
      superseded: [{ eventId: checkedId, type: 'checked' }],
    });
    await tale.tell('checked');
    expect(await tale.stage()).toBe('checked');
    const { rows } = await shutdown.plant.db.query(
      "SELECT type, amends FROM event WHERE joint_id = $1 AND type IN ('opened', 'corrected') ORDER BY sequence",
      [tale.jointId],
    );
    expect(rows).toEqual([
      { type: 'opened', amends: null },
      { type: 'corrected', amends: tale.eventId('opened') },
    ]);
  });

  it('must be as well formed as the fact that it replaces', async () => {
    const tale = await taleTo(shutdown, 'open');
    const response = await tale.say('corrected', { change: { payload: { cautionShown: 'yes' } } });
    expect(response.body).toMatchObject({ status: 400, type: 'urn:seatwell:problem:bad-input' });
    expect(response.body.errors.length).toBeGreaterThan(0);
  });
});

describe('the same command', () => {
  it('sent again gets the first answer, even after the joint has moved on', async () => {
    const tale = await taleTo(shutdown, 'released');
    const said = { eventId: uuidv7(), at: shutdown.plant.now.toISOString(), versionSeen: null };
    const first = accepted(await tale.say('opened', said));
    await tale.goOn('faces accepted', 'open');
    expect(accepted(await tale.say('opened', said))).toEqual(first);
    const other = await tale.say('opened', { ...said, change: { remark: 'another thing' } });
    expect(other.body.type).toBe('urn:seatwell:problem:event-id-reused');
    const byAnother = await tale.say('opened', { ...said, by: shutdown.mate });
    expect(byAnother.body.type).toBe('urn:seatwell:problem:event-id-reused');
  });
});
