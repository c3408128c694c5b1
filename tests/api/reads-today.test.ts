import type {
  AreasAnswer,
  BlindsAnswer,
  ChoicesAnswer,
  CrewsAnswer,
  PackPage,
  PacksAnswer,
  ProgressAnswer,
  RecordHead,
  ReviewsAnswer,
  ShutdownAnswer,
  SystemPage,
  SystemsAnswer,
  TalksAnswer,
  TodayAnswer,
} from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, siteCommand } from './support/plant.ts';
import { read } from './support/read.ts';
import { type ListedJoint, listJoint, openShutdown, registerTool, type Shutdown } from './support/shutdown.ts';
import {
  engineer,
  onMake,
  openAndNipUp,
  openingBy,
  passOf,
  release,
  testAndProve,
  tighten,
  wait,
} from './support/work.ts';

let shutdown: Shutdown;
let left: ListedJoint;
let tight: ListedJoint;
const blindId = uuidv7();

/** Night shift of 9 March in Oslo: what was left part tight is told to the day shift of the 10th. */
beforeAll(async () => {
  shutdown = await openShutdown();
  const { plant, shutdownId, coordinator, technician, chargehand, inspector, crewId } = shutdown;
  plant.now = new Date('2027-03-09T18:00:00Z');
  left = await listJoint(shutdown, { tag: 'U41-HX3-07' });
  tight = await listJoint(shutdown, { tag: 'U41-HX3-08' });
  const checked = await listJoint(shutdown, { tag: 'U41-HX3-09' });
  await listJoint(shutdown, { tag: 'U41-HX3-10', makes: [{ plannedOn: null }] });
  for (const joint of [left, tight, checked]) {
    await engineer(shutdown, joint);
    await release(shutdown, joint);
    await openAndNipUp(shutdown, joint);
  }
  for (const joint of [tight, checked]) await tighten(shutdown, joint);
  await onMake(shutdown, checked).must(chargehand, 'checked', {
    level: 'chargehand',
    outcome: 'accepted',
    reason: null,
  });
  const { must } = onMake(shutdown, left);
  const by = { performedBy: [technician.personId, shutdown.mate.personId] };
  await must(technician, 'pass-recorded', await passOf(shutdown, left, 1), by);
  await must(
    technician,
    'pass-recorded',
    { ...(await passOf(shutdown, left, 2)), outcome: 'interrupted', lastBolt: 6, boltsDone: 5, why: 'end of shift' },
    by,
  );
  accepted(
    await command(plant, coordinator, shutdownId, 'blind-planned', blindId, {
      blindId,
      number: 'B-7',
      type: 'spade',
      rating: '300',
      thickness_mm: 12,
      purpose: 'isolation',
      jointId: tight.jointId,
      packId: null,
      owner: 'Operations',
      outBy: '2027-03-09',
    }),
  );
  accepted(
    await command(plant, technician, shutdownId, 'blind-in', blindId, { tagHung: true, photo: null, remark: null }),
  );
  await registerTool(plant, inspector, uuidv7(), 'TW-LAPSING', 'torque-wrench', 300, 'N·m', {
    validThrough: '2027-03-10',
  });
  const newcomer = uuidv7();
  accepted(
    await siteCommand(plant, plant.administrator, 'person-registered', newcomer, {
      personId: newcomer,
      name: 'Nina Newcomer',
      company: 'Contractor',
      badge: null,
      trade: null,
    }),
  );
  accepted(
    await command(plant, coordinator, shutdownId, 'crew-listed', crewId, {
      crewId,
      code: 'D1',
      company: 'Contractor',
      shift: 'day',
      personIds: [technician.personId, shutdown.mate.personId, chargehand.personId, newcomer],
    }),
  );
  // The next morning, after the night shift.
  plant.now = new Date('2027-03-10T06:30:00Z');
});
afterAll(() => shutdown.close());

const today = () => read<TodayAnswer>(shutdown, shutdown.coordinator, '/today');

describe('today', () => {
  it('names the joint that is part tight, who left it, and where to restart', async () => {
    const { partTight, shift, lastShift } = await today();
    expect(shift).toMatchObject({ name: 'day', day: '2027-03-10' });
    expect(lastShift).toMatchObject({ name: 'night', day: '2027-03-09' });
    expect(partTight).toMatchObject([
      {
        tag: 'U41-HX3-07',
        size: 'NPS8',
        rating: '300',
        boltCount: 12,
        pass: 2,
        lastBolt: 6,
        why: 'end of shift',
        crew: { code: 'D1' },
        area: { code: 'U41' },
        leftBy: [{ name: 'Theo Technician' }, { name: 'Mara Mate' }],
        interruptedLastShift: true,
        restart: { pass: 2, passCount: 3, repeats: true, finalRound: false, leftOvernight: true },
      },
    ]);
  });

  it('says what stops the next pack, and who moves it on', async () => {
    const { packs } = await today();
    expect(packs.all).toBe(1);
    expect(packs.rows).toMatchObject([
      {
        number: 'TP-41-01',
        stopper: {
          code: 'joints-not-tight',
          data: { count: 2, of: 4, tag: 'U41-HX3-07' },
          who: { role: 'technician', crew: { code: 'D1' } },
        },
        more: 2,
      },
    ]);
  });

  it('counts sign-offs by role, what is still in, and the last shift', async () => {
    const { signOffs, stillIn, lastShiftByArea, total, tight: count } = await today();
    expect([total, count]).toEqual([4, 2]);
    expect(signOffs.find((each) => each.waitsFor === 'procedure')).toMatchObject({
      role: 'engineer',
      count: 1,
      persons: [{ name: 'Enno Gineer' }],
    });
    expect(signOffs.find((each) => each.waitsFor === 'check')).toMatchObject({ role: 'chargehand', count: 1 });
    expect(stillIn).toEqual({
      blindsIn: 1,
      blindsOverdue: 1,
      temporaryGaskets: 0,
      temporaryBolts: 0,
      openEnds: 0,
      openEndsUncovered: 0,
    });
    expect(lastShiftByArea).toMatchObject([{ area: { code: 'U41' }, opened: 3, tight: 2, checked: 1 }]);
  });

  it('warns of what does not last through the shift', async () => {
    const { lapses } = await today();
    expect(lapses).toContainEqual(
      expect.objectContaining({ what: 'calibration', tag: 'TW-LAPSING', validThrough: '2027-03-10' }),
    );
    expect(lapses.find((each) => each.what === 'talk')).toMatchObject({
      code: 'BP-01',
      crew: { code: 'D1' },
      missing: [{ name: 'Nina Newcomer' }],
    });
    expect(lapses.filter((each) => each.what === 'qualification')).toEqual([]);
  });

  it('holds plan and actual against each other', async () => {
    const { tightByArea, curve, shutdown: dates } = await today();
    expect(dates).toMatchObject({ dayNumber: 10, days: 28 });
    expect(tightByArea).toMatchObject([
      { area: { code: 'U41' }, total: 4, checked: 1, tight: 1, begun: 1, planned: 3 },
    ]);
    expect(curve.plan).toHaveLength(28);
    expect(curve.plan.at(8)).toEqual({ day: '2027-03-09', count: 3 });
    expect(curve.plan.at(7)).toEqual({ day: '2027-03-08', count: 0 });
    expect(curve.unplanned).toBe(1);
    expect(curve.actual).toHaveLength(10);
    expect(curve.actual.at(-1)).toEqual({ day: '2027-03-10', count: 2 });
  });
});

describe('areas and progress', () => {
  it('answers progress, sign-offs and people side by side', async () => {
    const { rows } = await read<AreasAnswer>(shutdown, shutdown.coordinator, '/areas');
    expect(rows).toHaveLength(1);
    const [area] = rows;
    expect(area).toMatchObject({
      area: { code: 'U41' },
      total: 4,
      planned: 3,
      stages: { planned: 1, 'part-tight': 1, tight: 1, checked: 1, open: 0 },
    });
    const signOff = (what: string) => area?.signOffs.find((each) => each.what === what);
    expect(signOff('release')).toMatchObject({ given: 3, waiting: 0 });
    expect(signOff('check')).toMatchObject({
      given: 1,
      waiting: 1,
      by: [{ role: 'chargehand', count: 1, persons: [{ name: 'Chas Hand' }] }],
    });
    expect(signOff('proof')).toMatchObject({ given: 0, waiting: 1 });
    expect(area?.people).toMatchObject({
      persons: 4,
      inDate: 3,
      lapsing: [],
      missing: [{ person: { name: 'Nina Newcomer' }, method: 'torque-wrench', plannedJoints: 1, crew: { code: 'D1' } }],
    });
  });

  it.each(['area', 'system', 'pack', 'crew'])('adds up by %s', async (by) => {
    const answer = await read<ProgressAnswer>(shutdown, shutdown.coordinator, `/progress?by=${by}`);
    expect(answer.rows.reduce((sum, row) => sum + row.total, 0)).toBe(4);
    expect(answer.rows[0]?.stages).toMatchObject({ planned: 1, 'part-tight': 1, tight: 1, checked: 1 });
  });
});

describe('lists of the shutdown', () => {
  it('offers what forms choose from', async () => {
    const choices = await read<ChoicesAnswer>(shutdown, shutdown.coordinator, '/choices');
    expect(choices).toMatchObject({
      areas: [{ code: 'U41' }],
      systems: [{ code: '41-01', areaId: shutdown.areaId }],
      packs: [{ number: 'TP-41-01' }],
      sizes: ['NPS8'],
    });
    expect(choices.crews[0]?.persons.map((person) => person.name)).toContain('Nina Newcomer');
    expect(choices.actions.find((action) => action.type === 'area-listed')?.allowed).toBe(true);
    const crews = await read<CrewsAnswer>(shutdown, shutdown.technician, '/crews');
    expect(crews.rows).toMatchObject([{ code: 'D1', joints: 4, methods: ['torque-wrench'] }]);
    expect(crews.rows[0]?.persons.find((person) => person.name === 'Nina Newcomer')?.qualifiedFor).toEqual([]);
    const talks = await read<TalksAnswer>(shutdown, shutdown.technician, '/talks');
    expect(talks.rows).toMatchObject([
      { code: 'BP-01', revision: 1, heldBy: { name: 'Chas Hand' }, crew: { code: 'D1' } },
    ]);
    const page = await read<ShutdownAnswer>(shutdown, shutdown.technician, '/shutdown');
    expect(page).toMatchObject({ name: 'Spring', shift: { name: 'day' }, settings: { sampleShare: 0.1 } });
    expect(page.actions.every((action) => !action.allowed)).toBe(true);
  });

  it('counts blinds and says which may be moved', async () => {
    const { rows, counts } = await read<BlindsAnswer>(shutdown, shutdown.technician, '/blinds');
    expect(counts).toEqual({ planned: 0, in: 1, out: 0, overdue: 1 });
    expect(rows[0]).toMatchObject({ number: 'B-7', state: 'in', overdue: true, joint: { tag: 'U41-HX3-08' } });
    expect(rows[0]?.actions).toMatchObject([
      { type: 'blind-in', allowed: false, reason: { code: 'in-already' } },
      { type: 'blind-out', allowed: true },
      { type: 'spectacle-turned', allowed: false },
    ]);
  });

  it('shows the length and root of the record', async () => {
    const head = await read<RecordHead>(shutdown, shutdown.technician, '/record/head');
    const { rows } = await shutdown.plant.db.query('SELECT count(*) AS n FROM event WHERE stream_id = $1', [
      shutdown.shutdownId,
    ]);
    expect(head.sequence).toBe(rows[0].n);
    expect(head.root).toMatch(/^[0-9a-f]{64}$/);
  });

  it('lists a fact that was kept although rules failed, until it is settled', async () => {
    const joint = await listJoint(shutdown, { tag: 'U41-EARLY', makes: [{ packs: [] }] });
    const { eventId } = await onMake(shutdown, joint).must(shutdown.technician, 'opened', openingBy(shutdown), {
      alreadyDone: true,
    });
    const { rows } = await read<ReviewsAnswer>(shutdown, shutdown.inspector, '/reviews');
    expect(rows).toMatchObject([
      {
        eventId,
        type: 'opened',
        joint: { tag: 'U41-EARLY' },
        recordedBy: { name: 'Theo Technician' },
        behind: null,
        stage: 'planned',
      },
    ]);
    expect(rows[0]?.rules.map((rule) => rule.code)).toContain('open.released-first');
    expect(rows[0]?.rules.every((rule) => rule.sentence.length > 0)).toBe(true);
    expect(rows[0]?.actions.find((action) => action.type === 'review-settled')?.allowed).toBe(true);
    expect((await today()).needsReview).toBe(1);
    await onMake(shutdown, joint).must(shutdown.inspector, 'review-settled', {
      eventId,
      outcome: 'reject-as-not-done',
      reason: 'Never opened',
      punchId: null,
    });
    expect((await read<ReviewsAnswer>(shutdown, shutdown.inspector, '/reviews')).rows).toEqual([]);
    accepted(
      await command(
        shutdown.plant,
        shutdown.coordinator,
        shutdown.shutdownId,
        'joint-voided',
        joint.jointId,
        { why: 'not-opened', reason: 'Stays closed' },
        { versionSeen: 3 },
      ),
    );
  });
});

describe('a pack and its system', () => {
  it('goes from stopped to proven, with results by joint, and the system to its zeros', async () => {
    const early = await read<PackPage>(shutdown, shutdown.inspector, `/packs/${shutdown.packId}`);
    expect(early.state).toBe('planned');
    expect(early.stoppers.map((stopper) => stopper.code)).toEqual([
      'joints-not-tight',
      'joints-not-checked',
      'release-not-signed',
    ]);
    expect(early.members).toHaveLength(4);
    expect(early.members[0]).toMatchObject({ tag: 'U41-HX3-07', role: 'inside', stage: 'part-tight', result: null });
    expect(early.actions.find((action) => action.type === 'test-reading')?.reason?.code).toBe('not-released');

    const system = await read<SystemPage>(shutdown, shutdown.coordinator, `/systems/${shutdown.systemId}`);
    expect(system.zeros).toMatchObject({ notProven: 4, temporaryBlindsIn: 1, unclosedA: 0 });
    expect(system.notProven.map((joint) => joint.tag)).toContain('U41-HX3-07');
    expect(system.temporaryBlindsIn).toMatchObject([{ number: 'B-7', joint: { tag: 'U41-HX3-08' } }]);
    expect(system.actions.find((action) => action.type === 'hand-over-offered')).toMatchObject({
      allowed: false,
      reason: { code: 'not-zero' },
    });
    const listed = await read<SystemsAnswer>(shutdown, shutdown.coordinator, '/systems');
    expect(listed.rows[0]?.zeros).toEqual(system.zeros);
  });

  it('proves a pack of its own', async () => {
    const packId = uuidv7();
    const { plant, shutdownId, coordinator } = shutdown;
    accepted(
      await command(plant, coordinator, shutdownId, 'pack-planned', packId, {
        packId,
        number: 'TP-41-02',
        systemId: null,
        areaId: shutdown.areaId,
        way: 'hydrotest',
        medium: 'water',
        pressure_MPa: 3,
        pressureAsEntered: null,
        hold_min: 30,
        plannedOn: '2027-03-11',
      }),
    );
    const other = { ...shutdown, packId };
    const empty = await read<PacksAnswer>(shutdown, coordinator, '/packs');
    expect(empty.rows.find((pack) => pack.packId === packId)).toMatchObject({
      state: 'planned',
      stoppers: [{ code: 'no-joints' }],
    });
    const joint = await listJoint(other, { tag: 'U41-TEST-1', makes: [{ workScope: 'test-only' }] });
    const ready = await read<PackPage>(shutdown, coordinator, `/packs/${packId}`);
    expect(ready).toMatchObject({ state: 'ready', stoppers: [{ code: 'release-not-signed' }] });
    await testAndProve(other, [joint]);
    wait(shutdown, 1);
    const proven = await read<PackPage>(shutdown, coordinator, `/packs/${packId}`);
    expect(proven).toMatchObject({
      state: 'proven',
      stoppers: [],
      released: { by: { name: 'Ina Spector' }, boundaryWalked: true },
      readings: [{ holds: true }],
      members: [{ tag: 'U41-TEST-1', result: 'no-leak', stage: 'proven' }],
    });
    expect(Object.values(proven.gaugeTags)).toEqual(['PG-1']);
  });

  it('is unknown in another shutdown', async () => {
    const base = `/api/v1/shutdowns/${uuidv7()}`;
    for (const path of ['/today', '/areas', '/packs', `/packs/${shutdown.packId}`, '/systems', '/reviews', '/choices'])
      await shutdown.coordinator.agent.get(base + path).expect(404);
    await shutdown.coordinator.agent.get(`/api/v1/shutdowns/${shutdown.shutdownId}/packs/${uuidv7()}`).expect(404);
  });
});
