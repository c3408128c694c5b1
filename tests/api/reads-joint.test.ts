import type { JointPage, MyJointsAnswer, TargetPreview, TryAnswer } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, engage, type SignedIn } from './support/plant.ts';
import { read, readSite } from './support/read.ts';
import { type ListedJoint, listJoint, openShutdown, type Shutdown } from './support/shutdown.ts';
import { engineer, jointState, onMake, openAndNipUp, passOf, release, tighten, wait } from './support/work.ts';

let shutdown: Shutdown;
let left: ListedJoint;
let planned: ListedJoint;
let tight: ListedJoint;

beforeAll(async () => {
  shutdown = await openShutdown();
  planned = await listJoint(shutdown, { tag: 'U41-PLANNED' });
  left = await listJoint(shutdown, { tag: 'U41-LEFT', criticality: 'B' });
  tight = await listJoint(shutdown, { tag: 'U41-TIGHT' });
  for (const joint of [left, tight]) {
    await engineer(shutdown, joint);
    await release(shutdown, joint);
    await openAndNipUp(shutdown, joint);
  }
  await tighten(shutdown, tight);
  const { must } = onMake(shutdown, left);
  const by = { performedBy: [shutdown.technician.personId, shutdown.mate.personId] };
  await must(shutdown.technician, 'pass-recorded', await passOf(shutdown, left, 1), by);
  await must(
    shutdown.technician,
    'pass-recorded',
    { ...(await passOf(shutdown, left, 2)), outcome: 'interrupted', lastBolt: 6, boltsDone: 5, why: 'end of shift' },
    by,
  );
});
afterAll(() => shutdown.close());

const page = (who: SignedIn, joint: ListedJoint) => read<JointPage>(shutdown, who, `/joints/${joint.jointId}`);
const actionsOf = async (who: SignedIn, joint: ListedJoint) =>
  new Map((await page(who, joint)).makes[0]?.actions.map((action) => [action.type, action]));

describe('the joint page', () => {
  it('says of every action whether the caller may record it now, and why not', async () => {
    const crew = await actionsOf(shutdown.technician, left);
    expect(crew.get('pass-recorded')).toMatchObject({ allowed: true, reason: null, signed: false, kind: 'fact' });
    expect(crew.get('opened')).toMatchObject({ allowed: true });
    expect(crew.get('final-round-recorded')).toMatchObject({
      allowed: false,
      reason: { code: 'tight.passes-first' },
    });
    expect(crew.get('break-released')).toMatchObject({
      allowed: false,
      signed: true,
      kind: 'decision',
      reason: { code: 'not-allowed' },
    });
    const operations = await actionsOf(shutdown.operations, left);
    expect(operations.get('break-released')).toMatchObject({
      allowed: false,
      reason: { code: 'released.engineered-first' },
    });
    expect(operations.get('pass-recorded')).toMatchObject({ reason: { code: 'not-allowed' } });
    const engineering = await actionsOf(shutdown.engineer, planned);
    expect(engineering.get('procedure-assigned')?.allowed).toBe(true);
    expect(engineering.get('target-approved')?.reason?.code).toBe('engineered.procedure-first');
  });

  it('names the hold that stops the work, and lets its role release it', async () => {
    const joint = await listJoint(shutdown);
    await engineer(shutdown, joint);
    await onMake(shutdown, joint).must(shutdown.inspector, 'hold-placed', {
      holdId: uuidv7(),
      reason: 'Drawing is wrong',
      releasedBy: 'inspector',
    });
    expect((await actionsOf(shutdown.operations, joint)).get('break-released')).toMatchObject({
      allowed: false,
      reason: { code: 'released.not-on-hold', message: expect.stringContaining('Drawing is wrong') },
    });
    const inspectors = await page(shutdown.inspector, joint);
    expect(inspectors.actions.find((action) => action.type === 'hold-released')?.allowed).toBe(true);
    expect(inspectors.makes[0]?.waitsFor).toMatchObject({ code: 'hold', by: 'inspector' });
  });

  it('tells the history with names, signatures and the values of its sentences', async () => {
    const { history, names, toolTags, joint, makes, shownMakeId, permits } = await page(shutdown.engineer, left);
    expect(joint.version).toBe((await jointState(shutdown, left.jointId)).version);
    expect(history.map((entry) => entry.type)).toEqual([
      'pass-recorded',
      'pass-recorded',
      'nipped-up',
      'faces-inspected',
      'opened',
      'break-released',
      'target-approved',
      'procedure-assigned',
      'joint-listed',
    ]);
    expect(history[0]).toMatchObject({
      recordedBy: { name: 'Theo Technician' },
      performedBy: [{ name: 'Theo Technician' }, { name: 'Mara Mate' }],
      signed: null,
      data: {
        pass: 2,
        outcome: 'interrupted',
        lastBolt: 6,
        tool: 'TW-1',
        unit: 'N·m',
        minutes: 20,
        why: 'end of shift',
      },
    });
    expect(history.find((entry) => entry.type === 'break-released')?.signed).toMatchObject({
      person: { name: 'Opal Rations' },
      role: 'operations',
      meaning: '→ released',
      contentHash: expect.stringMatching(/^[0-9a-f]{64}$/),
    });
    expect(names[shutdown.mate.personId]).toBe('Mara Mate');
    expect(toolTags[shutdown.wrenchId]).toBe('TW-1');
    expect(shownMakeId).toBe(left.makeId);
    expect(permits[0]).toMatchObject({ inForce: true, isolationReference: 'ISO-1' });
    expect(makes[0]).toMatchObject({
      stage: 'part-tight',
      facesToInspect: 2,
      checkingLevel: 'sample',
      waitsFor: { code: 'pass', by: 'technician', data: { pass: 2, of: 3 } },
      restartFrom: { pass: 2, passCount: 3, repeats: true, lastBolt: 6, leftBy: [{ name: 'Theo Technician' }, {}] },
      crew: { code: 'D1' },
      packs: [{ number: 'TP-41-01', role: 'inside', released: false }],
      procedure: { code: 'BP-01', revision: 1, lubricant: { nutFactor: 0.16 } },
      target: { basis: 'calculated', insideWindow: true },
    });
    expect(makes[0]?.crewPersons.map((person) => person.name)).toContain('Chas Hand');
    expect(makes[0]?.flags.map((flag) => flag.code)).toContain('part-tight');
  });

  it('is found by its tag, and not under another shutdown', async () => {
    const found = await read<JointPage>(shutdown, shutdown.mate, '/joints/by-tag/U41-LEFT');
    expect(found.joint.jointId).toBe(left.jointId);
    const { status } = await shutdown.mate.agent.get(`/api/v1/shutdowns/${shutdown.shutdownId}/joints/by-tag/U41-NONE`);
    expect(status).toBe(404);
    await shutdown.mate.agent.get(`/api/v1/shutdowns/${uuidv7()}/joints/${left.jointId}`).expect(404);
  });
});

describe('my joints', () => {
  it('puts what is part tight first, then what can be done now, then what waits for others', async () => {
    const { rows, crews } = await read<MyJointsAnswer>(shutdown, shutdown.technician, '/my-joints');
    expect(crews).toMatchObject([{ code: 'D1' }]);
    expect(rows[0]).toMatchObject({
      tag: 'U41-LEFT',
      can: 'part-tight',
      blockedBy: null,
      restart: { pass: 2, repeats: true, why: 'end of shift', leftBy: [{ name: 'Theo Technician' }, {}] },
    });
    expect(rows[0]?.nextSteps).toContain('pass-recorded');
    expect(rows.find((row) => row.tag === 'U41-PLANNED')).toMatchObject({
      can: 'waiting',
      blockedBy: { code: 'procedure', by: 'engineer' },
    });
    const order = ['part-tight', 'now', 'waiting'];
    const ranks = rows.map((row) => order.indexOf(row.can));
    expect(ranks).toEqual([...ranks].sort());
  });

  it('gives chargehand, engineer and operations what waits for them', async () => {
    const chargehands = await read<MyJointsAnswer>(shutdown, shutdown.chargehand, '/my-joints');
    expect(chargehands.rows.find((row) => row.tag === 'U41-TIGHT')).toMatchObject({
      can: 'now',
      waitsFor: { code: 'check', by: 'chargehand' },
    });
    const crew = await read<MyJointsAnswer>(shutdown, shutdown.technician, '/my-joints');
    expect(crew.rows.find((row) => row.tag === 'U41-TIGHT')).toMatchObject({ can: 'waiting' });
    const engineers = await read<MyJointsAnswer>(shutdown, shutdown.engineer, '/my-joints');
    expect(engineers.rows.map((row) => [row.tag, row.can])).toEqual([['U41-PLANNED', 'now']]);
    const operations = await read<MyJointsAnswer>(shutdown, shutdown.operations, '/my-joints');
    expect(operations.rows.map((row) => row.tag)).not.toContain('U41-LEFT');
  });
});

const tryOn = async (who: SignedIn, joint: ListedJoint, type: string, body: object) =>
  who.agent
    .post(`/api/v1/shutdowns/${shutdown.shutdownId}/joints/${joint.jointId}/makes/${joint.makeId}/try/${type}`)
    .send(body);

describe('trying', () => {
  it('answers every rule that would stop it, and records nothing', async () => {
    const before = await jointState(shutdown, planned.jointId);
    const { body } = await tryOn(shutdown.technician, planned, 'opened', {
      payload: { zeroEnergyChecks: [], cautionShown: false, openEndsCovered: false, remark: null },
    });
    const answer = body as TryAnswer;
    expect(answer.wouldRecord).toBe(false);
    expect(answer.failed.length).toBeGreaterThan(1);
    expect(answer.failed.map((rule) => rule.rule)).toContain('open.released-first');
    expect(answer.failed[0]).toMatchObject({ joint: 'U41-PLANNED', severity: 'stop' });
    expect(await jointState(shutdown, planned.jointId)).toEqual(before);
  });

  it('answers the stage that it would lead to, still recording nothing', async () => {
    const { version } = await jointState(shutdown, tight.jointId);
    const payload = { level: 'chargehand', outcome: 'accepted', reason: null };
    const { body } = await tryOn(shutdown.chargehand, tight, 'checked', { payload, versionSeen: version });
    expect(body).toMatchObject({ wouldRecord: true, failed: [], problem: null, stage: 'checked' });
    expect((await jointState(shutdown, tight.jointId)).makes[0]?.stage).toBe('tight');
    const events = await shutdown.plant.db.query("SELECT 1 FROM event WHERE type = 'checked'");
    expect(events.rowCount).toBe(0);
  });

  it('tells a stale version and a missing role from a rule', async () => {
    const payload = { procedureId: shutdown.procedureId, revision: 1 };
    const stale = await tryOn(shutdown.engineer, planned, 'procedure-assigned', { payload, versionSeen: 0 });
    expect(stale.body.problem).toMatchObject({ code: 'stale-decision' });
    const other = await tryOn(shutdown.technician, planned, 'procedure-assigned', { payload, versionSeen: 1 });
    expect(other.body.problem).toMatchObject({ code: 'not-allowed' });
    const nothing = await tryOn(shutdown.engineer, planned, 'shutdown-opened', { payload: {} });
    expect(nothing.status).toBe(400);
    const wrong = await tryOn(shutdown.engineer, planned, 'procedure-assigned', { payload: { revision: 'one' } });
    expect(wrong.status).toBe(400);
  });
});

describe('a target before it is approved', () => {
  const choice = () => ({
    basis: 'calculated',
    gasketDataId: shutdown.gasketDataId,
    lubricantId: shutdown.lubricantId,
    boltStress_MPa: null,
    acceptedShortfall: null,
  });
  const preview = (who: SignedIn, joint: ListedJoint, body: object) =>
    who.agent
      .post(`/api/v1/shutdowns/${shutdown.shutdownId}/joints/${joint.jointId}/makes/${joint.makeId}/target-preview`)
      .send(body);

  it('shows its window, what governs it and its whole working', async () => {
    const { body, status } = await preview(shutdown.engineer, tight, choice());
    expect(status).toBe(200);
    const answer = body as TargetPreview;
    expect(answer.answer?.window.open).toBe(true);
    expect(answer.answer?.window.lower.length).toBeGreaterThan(1);
    expect(answer.answer?.working?.length).toBeGreaterThan(5);
    const approved = (await page(shutdown.engineer, tight)).makes[0]?.target;
    expect(answer.target.torque_Nm).toBeCloseTo(approved?.torque_Nm ?? Number.NaN, 6);
  });

  it('explains the target to those who work to it', async () => {
    const { body, status } = await preview(shutdown.technician, tight, choice());
    expect(status).toBe(200);
    const approved = (await page(shutdown.engineer, tight)).makes[0]?.target;
    expect((body as TargetPreview).target.torque_Nm).toBe(approved?.torque_Nm);
  });

  it('is refused with what is missing', async () => {
    const refused = await preview(shutdown.engineer, planned, choice());
    expect(refused.status).toBe(422);
    expect(refused.body.errors[0].code).toBe('procedure-missing');
  });
});

describe('roles and erased names', () => {
  it('keeps accounts to the administrator, and everything from somebody without a role', async () => {
    await shutdown.technician.agent.get('/api/v1/accounts').expect(403);
    const { plant } = shutdown;
    const accounts = await readSite<{ rows: { email: string; grants: { role: string; inForce: boolean }[] }[] }>(
      plant.administrator,
      '/accounts',
    );
    const own = accounts.rows.find((row) => row.email === shutdown.technician.email);
    expect(own?.grants).toMatchObject([{ role: 'technician', inForce: true }]);
    const former = await engage(plant, 'management', 'Mana Gement');
    const { rows } = await plant.db.query('SELECT grant_id FROM role_grant WHERE account_id = $1', [former.accountId]);
    const grantId = rows[0]?.grant_id as string;
    const { body } = await plant.administrator.agent.post('/api/v1/site/commands/role-ended').send({
      eventId: uuidv7(),
      v: 1,
      subjectId: grantId,
      deviceTime: plant.now.toISOString(),
      payload: { reason: null },
    });
    expect(body.disposition).toBe('applied');
    await former.agent.get(`/api/v1/shutdowns/${shutdown.shutdownId}/joints`).expect(403);
  });

  it('shows a punch item with its joint, and that only an inspector closes it', async () => {
    const punchId = uuidv7();
    const { plant, shutdownId, technician, inspector } = shutdown;
    accepted(
      await command(plant, technician, shutdownId, 'punch-raised', punchId, {
        punchId,
        category: 'B',
        text: 'Tag missing',
        jointId: tight.jointId,
        packId: null,
        systemId: null,
        owner: 'D1',
      }),
    );
    wait(shutdown, 1);
    const theirs = await read<{ rows: JointPage['punchItems'] }>(shutdown, technician, '/punch-items');
    expect(theirs.rows[0]).toMatchObject({
      text: 'Tag missing',
      joint: { tag: 'U41-TIGHT' },
      raisedBy: { name: 'Theo Technician' },
      actions: [{ type: 'punch-closed', allowed: false }],
    });
    const page = await read<JointPage>(shutdown, inspector, `/joints/${tight.jointId}`);
    expect(page.punchItems[0]?.actions[0]).toMatchObject({ allowed: true, signed: true });
    expect(page.makes[0]?.flags.map((flag) => flag.code)).toContain('punch-B');
  });
});
