import type { ImportChoicesInput, ProblemBody } from '@seatwell/contract';
import { foldHistory, type JointState } from '@seatwell/workflow';
import pg from 'pg';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jointHistory } from '../../apps/server/src/features/joints/joint-store.ts';
import { leafHash, rootOfLeaves } from '../../apps/server/src/platform/record/merkle.ts';
import { sampleRegister } from '../browser/support/sample-register.ts';
import { csv, HEADERS, holdings, importing, ok } from './support/importing.ts';
import { accepted, command } from './support/plant.ts';
import { openShutdown, type Shutdown } from './support/shutdown.ts';
import { engineer as engineerIt, onMake } from './support/work.ts';

let shutdown: Shutdown;
let register: ReturnType<typeof importing>;
beforeAll(async () => {
  shutdown = await openShutdown();
  register = importing(shutdown);
});
afterAll(() => shutdown.close());

const answers = {
  'all.gasketCount.insert': 2,
  'all.boltCount.EN-1092-1.DN65': 4,
  'word.criticality.high': 'A',
  'word.workScope.re torque': 'retighten-ambient',
};
const answered: ImportChoicesInput = { sheet: 'Joints', options: { answers }, newCrewCompany: 'Contractor' };

const jointBy = async (tag: string): Promise<JointState> => {
  const { rows } = await shutdown.plant.db.query('SELECT state FROM joint WHERE shutdown_id = $1 AND tag = $2', [
    shutdown.shutdownId,
    tag,
  ]);
  return rows[0].state;
};

describe('a register with errors', () => {
  it('has every bad cell named and nothing recorded', async () => {
    const before = await holdings(shutdown);
    const sample = await sampleRegister();
    const draft = await register.draft(sample.bytes);
    expect(draft.sheets.map((sheet) => sheet.name)).toEqual(['Read me', 'Joints']);
    const preview = await register.preview(draft.importId, { sheet: 'Joints' });
    expect(preview.choices.headerRow).toBe(sample.headerRow);
    expect(preview.mappedBy).toBe('guessed');
    const cells = (await register.problems(draft.importId)).map(
      ({ rowNumber, column, code }) => `${column}${rowNumber} ${code}`,
    );
    for (const { rowNumber, column, code } of sample.planted) expect(cells).toContain(`${column}${rowNumber} ${code}`);
    expect(cells.filter((cell) => cell.endsWith('tag-twice'))).toHaveLength(2);
    expect(preview.questions.map((question) => question.key).sort()).toEqual([...sample.questions].sort());
    expect(preview.counts.new + preview.counts.error).toBe(sample.jointCount);
    expect(preview.counts.error).toBeGreaterThan(10);
    expect(await holdings(shutdown)).toEqual(before);

    const refused = await register.confirm(preview);
    expect(refused.status).toBe(400);
    expect((refused.body as ProblemBody).errors.map((error) => error.code)).toContain('crew-company');
    const company = await register.preview(draft.importId, { sheet: 'Joints', newCrewCompany: 'Contractor' });
    const inError = await register.confirm(company);
    expect(inError.status).toBe(422);
    expect((inError.body as ProblemBody).errors[0]?.code).toBe('rows-in-error');
    expect(await holdings(shutdown)).toEqual(before);
  });

  it('is imported once corrected and answered, with what it names', async () => {
    const before = await holdings(shutdown);
    const sample = await sampleRegister({ corrected: true });
    const draft = await register.draft(sample.bytes);
    const preview = await register.preview(draft.importId, answered);
    expect(preview.counts).toMatchObject({ rows: sample.jointCount, new: sample.jointCount, error: 0 });
    expect(preview.questions).toEqual([]);
    expect(preview.named.areas.map((area) => area.name)).toContain('Utilities');
    expect(await holdings(shutdown)).toEqual(before);

    const eventId = uuidv7();
    const deviceTime = shutdown.plant.now.toISOString();
    const answer = await register.imported(preview, { eventId, deviceTime });
    expect(answer).toMatchObject({ listed: sample.jointCount, specified: 0, leftOut: 0 });
    const after = await holdings(shutdown);
    expect(after.joints).toBe((before.joints ?? 0) + sample.jointCount);
    expect(after.counted).toBe(after.joints);
    expect(after.areas).toBe((before.areas ?? 0) + answer.created.areas);

    // The same confirmation again: the same job, the same event.
    const again = ok<{ jobId: string }>(await register.confirm(preview, { eventId, deviceTime }));
    expect((await register.ended(again.jobId)).result).toEqual(answer);
    expect(await holdings(shutdown)).toEqual(after);
    const otherwise = await register.confirm(preview, { eventId, deviceTime, leaveOutRowsInError: true });
    expect(otherwise.body.type).toBe('urn:seatwell:problem:event-id-reused');
  });

  it('leaves each joint as the fold of its own events says', async () => {
    const { plant, shutdownId } = shutdown;
    const { rows } = await plant.db.query<{ site_id: string; joint_id: string; state: JointState; version: number }>(
      'SELECT site_id, joint_id, state, version FROM joint WHERE shutdown_id = $1',
      [shutdownId],
    );
    expect(rows.length).toBeGreaterThan(19);
    for (const row of rows) {
      const history = await jointHistory(plant.db, row.site_id, shutdownId, row.joint_id);
      expect(history).toHaveLength(row.version);
      expect(foldHistory(history)).toEqual(row.state);
    }
  });

  it('hangs its rows under the Merkle root that the event vouches for', async () => {
    const { rows: events } = await shutdown.plant.db.query(
      `SELECT event_id, rows_root, row_count, payload FROM event WHERE stream_id = $1 AND type = 'joint-listed' AND row_count > 0`,
      [shutdown.shutdownId],
    );
    expect(events).toHaveLength(1);
    const { rows } = await shutdown.plant.db.query<{ canonical: Buffer; leaf: Buffer }>(
      'SELECT canonical, leaf FROM event_row WHERE event_id = $1 ORDER BY row',
      [events[0].event_id],
    );
    expect(rows).toHaveLength(events[0].row_count);
    expect(rows.map((row) => leafHash(row.canonical))).toEqual(rows.map((row) => row.leaf));
    expect(rootOfLeaves(rows.map((row) => row.leaf))).toEqual(events[0].rows_root);
    expect(events[0].payload.source.sheet).toBe('Joints');
  });

  it('fills an insert joint with two gaskets and the plate between them', async () => {
    const spade = await jointBy('J-1003');
    expect(spade.kind).toBe('insert');
    expect(spade.specification.gasket.count).toBe(2);
    expect(spade.specification.clampedParts.map((part) => part.kind)).toEqual([
      'flange',
      'gasket',
      'spade',
      'gasket',
      'flange',
    ]);
    expect(spade.makes).toHaveLength(1);
    expect(spade.makes[0]).toMatchObject({ purpose: 'final', workScope: 'break-and-remake', stage: 'planned' });
    expect(spade.makes[0]?.packs).toHaveLength(1);
  });
});

describe('importing again', () => {
  it('changes nothing where the file says what the register says', async () => {
    const sample = await sampleRegister({ corrected: true });
    const draft = await register.draft(sample.bytes);
    const preview = await register.preview(draft.importId, answered);
    expect(preview.counts).toMatchObject({ new: 0, changed: 0, same: sample.jointCount, error: 0 });
    expect(preview.stops.map((stop) => stop.code)).toEqual(['nothing-to-import']);
    expect((await register.confirm(preview)).status).toBe(400);
  });

  it('shows what differs by tag, in any spelling, and changes only that', async () => {
    const before = await jointBy('J-1001');
    const preview = await register.previewed(csv('Tag,Location,Planned date', 'j-1001,upper deck,2027-06-01'));
    expect(preview.counts).toMatchObject({ new: 0, changed: 1, same: 0, error: 0 });
    const [row] = await register.rows(preview.importId, 'changed');
    expect(row?.differences).toEqual([
      { field: 'location', before: before.whereabouts.location, after: 'upper deck' },
      { field: 'plannedDate', before: before.makes[0]?.plannedOn, after: '2027-06-01' },
    ]);
    expect(await jointBy('J-1001')).toEqual(before);

    const answer = await register.imported(preview);
    expect(answer).toMatchObject({ listed: 0, specified: 1, assigned: 1 });
    const after = await jointBy('J-1001');
    expect(after.whereabouts).toEqual({ ...before.whereabouts, location: 'upper deck' });
    expect(after.specification).toEqual(before.specification);
    expect(after.makes[0]?.plannedOn).toBe('2027-06-01');
    const { rows } = await shutdown.plant.db.query('SELECT site_id FROM joint WHERE joint_id = $1', [after.jointId]);
    const history = await jointHistory(shutdown.plant.db, rows[0].site_id, shutdown.shutdownId, after.jointId);
    expect(foldHistory(history)).toEqual(after);
  });

  it('changes what an engineered joint’s target stands on through the register alone: the make keeps what was approved', async () => {
    const tag = 'E-1';
    await register.imported(
      await register.previewed(csv(HEADERS, `${tag},U41,8",300,SWG,C,`), { options: { answers: {} } }),
    );
    const joint = await jointBy(tag);
    const make = joint.makes[0];
    if (!make) throw new Error('The imported joint has no make.');
    const listed = { jointId: joint.jointId, tag, makeId: make.makeId, makeIds: [make.makeId] };
    await onMake(shutdown, listed).must(shutdown.coordinator, 'joint-specified', {
      specification: {
        ...joint.specification,
        bolting: { count: 12, thread: '7/8-9 UNC', grade: 'B7', nutGrade: '2H', length_mm: 140 },
        service: { ...joint.specification.service, pressure_MPa: 2, temperature_C: 120 },
      },
      reason: null,
    });
    await engineerIt(shutdown, listed);
    const preview = await register.previewed(csv('Tag,Design pressure (bar)', `${tag},31`));
    const [row] = await register.rows(preview.importId, 'changed');
    expect(row).toMatchObject({ stage: 'engineered', differences: [{ field: 'designPressure', after: '31 bar' }] });
    await register.imported(preview);
    const after = await jointBy(tag);
    expect(after.makes[0]?.stage).toBe('engineered');
    expect(after.makes[0]?.target).not.toBeNull();
    expect(after.specification.service.pressure_MPa).toBe(3.1);
    expect(after.specification.bolting).toMatchObject({ nutGrade: '2H', length_mm: 140 });
  });

  it('remembers the columns that were chosen for these headers', async () => {
    const file = csv('Ref,Where,Bore,Note', 'R-1,Utilities,DN 100,a');
    const first = await register.previewed(file, { mapping: { tag: 0, area: 1, size: 2, remark: 3 } });
    expect(first.mappedBy).toBe('chosen');
    const second = await register.previewed(csv('Ref,Where,Bore,Note', 'R-2,Utilities,DN 100,b'));
    expect(second.mappedBy).toBe('remembered');
    expect(second.choices.mapping).toEqual({ tag: 0, area: 1, size: 2, remark: 3 });
  });

  it('offers the answers of last time, and leaves the rows waiting until they are given for this file', async () => {
    const headers = 'Tag,Area,Standard,Size,Rating,Criticality,Class note';
    const file = (tag: string) =>
      csv(headers, `${tag}1,Utilities,EN 1092-1,DN 65,PN 16,high,a`, `${tag}2,Utilities,EN 1092-1,DN 100,PN 16,B,a`);
    const boltCount = 'all.boltCount.EN-1092-1.DN65';
    const criticality = 'word.criticality.high';
    const asked = async (tag: string, given: Record<string, string | number> = {}) => {
      const preview = await register.previewed(file(tag), { options: { answers: given } });
      const questions = preview.questions.map(({ key, lastAnswer }) => [key, lastAnswer] as const);
      return { error: preview.counts.error, questions: Object.fromEntries(questions) };
    };
    expect(await asked('A')).toEqual({ error: 1, questions: { [boltCount]: undefined, [criticality]: undefined } });
    expect((await asked('A', { [boltCount]: 4 })).questions).toEqual({ [criticality]: undefined });
    expect(await asked('A', { [boltCount]: 4, [criticality]: 'A' })).toEqual({ error: 0, questions: {} });

    expect(await asked('B')).toEqual({ error: 1, questions: { [boltCount]: 4, [criticality]: 'A' } });
    // Answered otherwise for one of them: the other's answer stays as it was, the next file is offered both.
    expect((await asked('B', { [boltCount]: 8 })).questions).toEqual({ [criticality]: 'A' });
    expect((await asked('C')).questions).toEqual({ [boltCount]: 8, [criticality]: 'A' });
    // Row 2 of another file is another joint: what was said of it alone is not offered.
    await asked('D', { 'row.2.boltCount': 4 });
    const { rows } = await shutdown.plant.db.query<{ answers: object }>(
      'SELECT answers FROM import_mapping ORDER BY used_at DESC LIMIT 1',
    );
    expect(rows[0]?.answers).toEqual({ [boltCount]: 8, [criticality]: 'A' });
    // An answer that is not among the choices is not offered.
    await asked('E', { [boltCount]: 5 });
    expect((await asked('F')).questions).toEqual({ [boltCount]: undefined, [criticality]: 'A' });
  });
});

describe('all or nothing', () => {
  const three = csv(HEADERS, 'N-1,U41,8",150,SWG,C,', 'N-2,New area,8",150,SWG,C,', 'N-3,U41,8",150,SWG,C,');

  it('leaves nothing behind when the transaction fails in the middle', async () => {
    const before = await holdings(shutdown);
    const preview = await register.previewed(three);
    const owner = new pg.Client({ connectionString: shutdown.plant.database.url });
    await owner.connect();
    await owner.query(`CREATE FUNCTION fail_at_n3() RETURNS trigger LANGUAGE plpgsql AS $$
      BEGIN IF NEW.tag = 'N-3' THEN RAISE EXCEPTION 'the disk is full'; END IF; RETURN NEW; END $$`);
    await owner.query('CREATE TRIGGER fail_at_n3 BEFORE INSERT ON joint FOR EACH ROW EXECUTE FUNCTION fail_at_n3()');
    const { jobId } = ok<{ jobId: string }>(await register.confirm(preview));
    const job = await register.ended(jobId);
    await owner.query('DROP FUNCTION fail_at_n3 CASCADE');
    await owner.end();
    expect(job.state).toBe('failed');
    expect(await holdings(shutdown)).toEqual(before);
    // Nothing stands in the way of another try.
    expect(await register.imported(preview)).toMatchObject({ listed: 3, created: { areas: 1 } });
  });

  it('records nothing when a joint moved on since the preview, and says what happened', async () => {
    const preview = await register.previewed(csv('Tag,Location', 'N-1,deck 2', 'N-2,deck 2'));
    const joint = await jointBy('N-2');
    accepted(
      await command(
        shutdown.plant,
        shutdown.coordinator,
        shutdown.shutdownId,
        'joint-specified',
        joint.jointId,
        { remark: 'seen on site', reason: null },
        { versionSeen: joint.version, makeId: joint.makes[0]?.makeId ?? '' },
      ),
    );
    const before = await holdings(shutdown);
    const refused = await register.confirm(preview);
    expect(refused.status).toBe(409);
    expect(refused.body.errors).toHaveLength(1);
    expect(refused.body.errors[0]).toMatchObject({ code: 'changed-since', joint: 'N-2' });
    expect(refused.body.errors[0].message).toContain('joint-specified');
    expect(await holdings(shutdown)).toEqual(before);
  });

  it('records nothing when somebody listed one of its tags meanwhile', async () => {
    const file = csv(HEADERS, 'T-1,U41,8",150,SWG,C,');
    const [first, second] = [await register.previewed(file), await register.previewed(file)];
    await register.imported(first);
    const refused = await register.confirm(second);
    expect(refused.status).toBe(409);
    expect(refused.body.errors[0]).toMatchObject({ code: 'listed-since', joint: 'T-1' });
  });

  it('binds a confirmation to the preview that was seen', async () => {
    const draft = await register.draft(csv(HEADERS, 'P-1,U41,8",150,SWG,,'), 'register.csv');
    const sheet = draft.sheets[0]?.name ?? '';
    const seen = await register.preview(draft.importId, { sheet });
    expect(seen.questions.map((question) => question.key)).toEqual(['all.criticality.missing']);
    await register.preview(draft.importId, { sheet, options: { defaultCriticality: 'B' } });
    expect((await register.confirm(seen, { leaveOutRowsInError: true })).status).toBe(409);
  });

  it('leaves out rows in error only where that is said, and states it in the record', async () => {
    const preview = await register.previewed(
      csv(HEADERS, 'L-1,U41,8",150,SWG,C,', 'L-2,Nowhere,7",150,SWG,C,', 'L-3,U41,8",150,SWG,C,'),
    );
    expect(preview.counts).toMatchObject({ new: 2, error: 1 });
    expect((await register.confirm(preview)).status).toBe(422);
    const answer = await register.imported(preview, { leaveOutRowsInError: true });
    expect(answer).toMatchObject({ listed: 2, leftOut: 1, created: { areas: 0 } });
    const { rows } = await shutdown.plant.db.query('SELECT payload FROM event WHERE event_id = $1', [answer.eventId]);
    expect(rows[0].payload.leftOutRowsInError).toEqual([3]);
  });
});
