import type {
  GasketDataAnswer,
  ItemsAnswer,
  JointPage,
  LubricantsAnswer,
  MakerTorquesAnswer,
  PeopleAnswer,
  PersonPage,
  ProceduresAnswer,
  ShutdownsAnswer,
  TargetTablesAnswer,
  ToolJointsAnswer,
  ToolsAnswer,
} from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, siteCommand } from './support/plant.ts';
import { read, readSite } from './support/read.ts';
import { procedureContent } from './support/sample-plant.ts';
import { listJoint, openShutdown, registerTool, type Shutdown } from './support/shutdown.ts';
import { taleTo } from './support/tale.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

describe('people', () => {
  it('come with what they may do until when, and their crews', async () => {
    const { technician, inspector, plant } = shutdown;
    const qualificationId = uuidv7();
    accepted(
      await siteCommand(plant, inspector, 'qualification-recorded', qualificationId, {
        qualificationId,
        personId: technician.personId,
        qualifiedFor: ['tensioner'],
        validFrom: '2026-01-01',
        validThrough: '2027-03-12',
        scheme: 'test scheme',
        certificate: null,
      }),
    );
    const { rows, actions } = await readSite<PeopleAnswer>(technician, '/people');
    const names = rows.map((row) => row.name ?? '');
    expect(names).toEqual([...names].sort());
    const own = rows.find((row) => row.personId === technician.personId);
    expect(own).toMatchObject({
      name: 'Theo Technician',
      hasAccount: true,
      crews: [{ code: 'D1', shutdown: 'Spring' }],
    });
    expect(own?.qualifications.map((each) => [each.validThrough, each.state])).toEqual([
      ['2028-01-01', 'in-date'],
      ['2027-03-12', 'lapsing'],
    ]);
    expect(actions.find((action) => action.type === 'qualification-recorded')?.allowed).toBe(false);
  });

  it('are erased from every page, the history included', async () => {
    const { plant, coordinator, technician } = shutdown;
    const personId = uuidv7();
    accepted(
      await siteCommand(plant, coordinator, 'person-registered', personId, {
        personId,
        name: 'Gone Tomorrow',
        company: 'Contractor',
        badge: '77',
        trade: null,
      }),
    );
    const joint = await listJoint(shutdown);
    const holdId = uuidv7();
    accepted(
      await command(
        plant,
        shutdown.inspector,
        shutdown.shutdownId,
        'hold-placed',
        joint.jointId,
        { holdId, reason: 'Seen by somebody', releasedBy: 'inspector' },
        { makeId: joint.makeId, performedBy: [personId] },
      ),
    );
    const before = await read<JointPage>(shutdown, technician, `/joints/${joint.jointId}`);
    expect(before.history[0]?.performedBy).toEqual([{ personId, name: 'Gone Tomorrow' }]);
    accepted(await siteCommand(plant, coordinator, 'person-erased', personId, { reason: 'Asked for' }));
    const after = await read<JointPage>(shutdown, technician, `/joints/${joint.jointId}`);
    expect(after.history[0]?.performedBy).toEqual([{ personId, name: null }]);
    expect(JSON.stringify(after)).not.toContain('Gone Tomorrow');
    const page = await readSite<PersonPage>(technician, `/people/${personId}`);
    expect(page).toMatchObject({ name: null, badge: null });
    expect(page.erasedAt).not.toBeNull();
    await technician.agent.get(`/api/v1/people/${uuidv7()}`).expect(404);
  });

  it('show the talks that they attended', async () => {
    const page = await readSite<PersonPage>(shutdown.technician, `/people/${shutdown.mate.personId}`);
    expect(page.talks).toMatchObject([{ code: 'BP-01', revision: 1, shutdownId: shutdown.shutdownId }]);
  });
});

describe('tools', () => {
  it('say which calibration is in force, lapsing, provisional or lapsed', async () => {
    const { plant, inspector } = shutdown;
    await registerTool(plant, inspector, uuidv7(), 'TW-2', 'torque-wrench', 300, 'N·m', { validThrough: '2027-03-14' });
    await registerTool(plant, inspector, uuidv7(), 'TW-3', 'torque-wrench', 300, 'N·m', { validThrough: '2027-03-08' });
    await registerTool(plant, inspector, uuidv7(), 'TW-4', 'torque-wrench', 300, 'N·m', { provisional: true });
    const { rows } = await readSite<ToolsAnswer>(shutdown.technician, '/tools');
    expect(rows.map((row) => [row.tag, row.state, row.inForce?.validThrough ?? null])).toEqual([
      ['PG-1', 'in-calibration', '2027-10-01'],
      ['TW-1', 'in-calibration', '2027-10-01'],
      ['TW-2', 'lapsing', '2027-03-14'],
      ['TW-3', 'lapsed', null],
      ['TW-4', 'provisional', '2027-10-01'],
    ]);
  });
});

it('a tool found wrong names the joints that it tightened since its last good calibration', async () => {
  const { plant, inspector, technician } = shutdown;
  const toolId = uuidv7();
  await registerTool(plant, inspector, toolId, 'TW-9', 'torque-wrench', 450, 'N·m');
  const tale = await taleTo(shutdown, 'nipped up');
  await tale.tell('pass-recorded', { change: { tools: { toolId, pumpId: null, gaugeId: null } } });
  expect(await readSite<ToolJointsAnswer>(technician, `/tools/${toolId}/joints`)).toEqual({ rows: [] });
  const foundOn = plant.now.toISOString().slice(0, 10);
  accepted(await siteCommand(plant, inspector, 'tool-failed', toolId, { reason: 'Reads 12 % low', foundOn }));
  const { rows } = await readSite<ToolJointsAnswer>(technician, `/tools/${toolId}/joints`);
  expect(rows).toMatchObject([{ jointId: tale.jointId, shutdown: 'Spring', makeNumber: 1, stage: 'part-tight' }]);
  const page = await read<JointPage>(shutdown, technician, `/joints/${tale.jointId}`);
  expect(page.makes[0]?.flags).toContainEqual({ code: 'tool-failed', detail: 'TW-9' });
});

describe('engineering data', () => {
  it('is listed with its content, source and hash', async () => {
    const { plant, engineer, technician } = shutdown;
    const makerTorqueId = uuidv7();
    accepted(
      await siteCommand(plant, engineer, 'maker-torque-entered', makerTorqueId, {
        makerTorqueId,
        item: 'Clamp 4 in',
        torque_Nm: 180,
        torqueAsEntered: { value: 180, unit: 'N·m' },
        source: 'test',
      }),
    );
    const torques = await readSite<MakerTorquesAnswer>(technician, '/maker-torques');
    expect(torques.rows).toMatchObject([{ dataId: makerTorqueId, name: 'Clamp 4 in', content: { torque_Nm: 180 } }]);
    const gaskets = await readSite<GasketDataAnswer>(technician, '/gasket-data');
    expect(gaskets.rows).toMatchObject([
      { dataId: shutdown.gasketDataId, content: { maximum_MPa: 230, source: 'test' } },
    ]);
    expect(gaskets.rows[0]?.hash).toMatch(/^[0-9a-f]{64}$/);
    const lubricants = await readSite<LubricantsAnswer>(engineer, '/lubricants');
    expect(lubricants).toMatchObject({
      rows: [{ content: { nutFactor: 0.16 } }],
      actions: [{ type: 'lubricant-entered', allowed: true, signed: false, kind: 'decision' }],
    });
  });

  it('has every revision of a procedure, and says what may become of each', async () => {
    const { plant, engineer, technician, procedureId, lubricantId } = shutdown;
    accepted(
      await siteCommand(plant, engineer, 'procedure-drafted', procedureId, {
        procedureId,
        revision: 2,
        code: 'BP-01',
        title: 'Torque, legacy pattern',
        content: procedureContent(lubricantId),
      }),
    );
    const { rows } = await readSite<ProceduresAnswer>(engineer, '/procedures');
    expect(rows.map((row) => [row.code, row.revision, row.state])).toEqual([
      ['BP-01', 2, 'draft'],
      ['BP-01', 1, 'approved'],
    ]);
    const may = (index: number) =>
      Object.fromEntries(rows[index]?.actions.map((action) => [action.type, action.allowed]) ?? []);
    expect(may(0)).toEqual({ 'procedure-drafted': true, 'procedure-approved': true, 'procedure-superseded': false });
    expect(may(1)).toEqual({ 'procedure-drafted': false, 'procedure-approved': false, 'procedure-superseded': true });
    expect(rows[1]?.approvedBy?.name).toBe('Enno Gineer');
    const theirs = await readSite<ProceduresAnswer>(technician, '/procedures');
    expect(theirs.rows[0]?.actions.every((action) => action.reason?.code === 'not-allowed')).toBe(true);
  });

  it('has the target tables that cover families', async () => {
    const { plant, engineer, procedureId, gasketDataId, lubricantId } = shutdown;
    const tableId = uuidv7();
    accepted(
      await siteCommand(plant, engineer, 'target-table-approved', tableId, {
        tableId,
        name: 'Class 300, spiral wound',
        procedureId,
        procedureRevision: 1,
        gasketDataId,
        lubricantId,
        boltGrade: 'B7',
        rows: [{ standard: 'ASME-B16.5', size: 'NPS8', rating: '300', boltStress_MPa: 300, acceptedShortfall: null }],
      }),
    );
    const tables = await readSite<TargetTablesAnswer>(engineer, '/target-tables');
    expect(tables.rows).toMatchObject([{ tableId, approvedBy: { name: 'Enno Gineer' }, content: { boltGrade: 'B7' } }]);
  });
});

describe('shutdowns and items', () => {
  it('are listed with their joints', async () => {
    const shutdowns = await readSite<ShutdownsAnswer>(shutdown.coordinator, '/shutdowns');
    expect(shutdowns.rows).toMatchObject([{ name: 'Spring', tight: 0, startsOn: '2027-03-01' }]);
    expect(shutdowns.rows[0]?.joints).toBeGreaterThan(0);
    const joint = await listJoint(shutdown, { tag: 'U41-V14-A' });
    const itemId = uuidv7();
    accepted(
      await command(shutdown.plant, shutdown.technician, shutdown.shutdownId, 'item-registered', itemId, {
        itemId,
        tag: 'V-14',
        kind: 'valve',
        jointIds: [joint.jointId],
        description: null,
      }),
    );
    const { rows } = await read<ItemsAnswer>(shutdown, shutdown.technician, '/items');
    expect(rows).toMatchObject([{ tag: 'V-14', whereabouts: 'in-line', joints: [{ tag: 'U41-V14-A' }] }]);
  });

  it('are described in the OpenAPI document, filters and answers alike', async () => {
    const { body } = await shutdown.technician.agent.get('/api/v1/openapi.json').expect(200);
    const register = body.paths['/api/v1/shutdowns/{shutdownId}/joints'].get;
    expect(register.parameters.map((parameter: { name: string }) => parameter.name)).toEqual(
      expect.arrayContaining(['stage', 'sort', 'cursor', 'limit']),
    );
    const answer = register.responses['200'].content['application/json'].schema;
    expect(Object.keys(answer.properties)).toContain('registerTotal');
    for (const path of ['today', 'areas', 'packs', 'systems', 'my-joints', 'choices', 'reviews'])
      expect(body.paths).toHaveProperty([`/api/v1/shutdowns/{shutdownId}/${path}`]);
  });
});
