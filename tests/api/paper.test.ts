import type { AreasAnswer, SystemsAnswer, TodayAnswer } from '@seatwell/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { coloursIn, pdfAt, picturesIn, printSelection, storePhoto } from './support/paper.ts';
import { pdfPages, pdfText } from './support/pdf-text.ts';
import { accepted, command } from './support/plant.ts';
import { read } from './support/read.ts';
import { listJoint, openShutdown, type Shutdown } from './support/shutdown.ts';
import { type Tale, taleTo } from './support/tale.ts';
import { engineer, makeState, openingBy, wait } from './support/work.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

const base = () => `/api/v1/shutdowns/${shutdown.shutdownId}`;
const paper = (path: string) => pdfAt(`${base()}${path}`, shutdown.technician);
const textOf = async (path: string) => pdfText(await paper(path));

describe('the photo on the joint sheet', () => {
  it('is of the register, else as the joint was last opened; a corrected opening no longer counts', async () => {
    const hash = await storePhoto(shutdown.technician);
    const tale = await taleTo(shutdown, 'released');
    const sheet = `/joints/${tale.jointId}/sheet.pdf`;
    expect(picturesIn(await paper(sheet))).toBe(0);
    await tale.tell('opened', { change: { photo: hash } });
    const opened = await paper(sheet);
    expect(picturesIn(opened)).toBe(1);
    expect(pdfText(opened)).toContain('Photo as it was opened');
    await tale.tell('joint-specified', {
      payload: { whereabouts: { photo: await storePhoto(shutdown.coordinator, '#222222') }, reason: null },
    });
    expect(pdfText(await paper(sheet))).toContain('Photo of the joint');
  });
});

describe('values of what is not in force', () => {
  it('of a procedure that is superseded are withheld from sheet and form', async () => {
    const tale = await taleTo(shutdown, 'engineered');
    const torque = Math.round((await tale.make()).target?.torque_Nm ?? Number.NaN);
    expect(await textOf(`/joints/${tale.jointId}/sheet.pdf`)).toContain(` ${torque} `);
    const { db } = shutdown.plant;
    const { rows } = await db.query<{ superseded_at: Date | null }>(
      'UPDATE procedure_revision SET superseded_at = now() WHERE procedure_id = $1 RETURNING superseded_at',
      [shutdown.procedureId],
    );
    expect(rows).toHaveLength(1);
    try {
      for (const path of ['sheet.pdf', 'record-form.pdf']) {
        const text = await textOf(`/joints/${tale.jointId}/${path}`);
        expect(text, path).toContain('NOT VALID: PROCEDURE SUPERSEDED');
        expect(text, path).not.toContain(` ${torque} `);
      }
    } finally {
      await db.query('UPDATE procedure_revision SET superseded_at = NULL WHERE procedure_id = $1', [
        shutdown.procedureId,
      ]);
    }
  });
});

describe('the tag', () => {
  it('names joint, studs and where to look from, has a stub a step, and no set value', async () => {
    const joint = await listJoint(shutdown);
    await engineer(shutdown, joint);
    const text = await textOf(`/joints/${joint.jointId}/tag.pdf`);
    expect(text).toContain(joint.tag);
    expect(text).toMatch(/12 × \S+ UNC/);
    expect(text).toContain('Seen from the pump side');
    for (const step of ['OPENED', 'FACES ACCEPTED', 'NIPPED UP', 'TIGHT', 'CHECKED']) expect(text).toContain(step);
    expect(text).not.toContain('N·m');
  });

  it('is printed for a selection on labels, the first of which are gone from the sheet', async () => {
    const joints = [await listJoint(shutdown), await listJoint(shutdown), await listJoint(shutdown)];
    const jointIds = joints.map(({ jointId }) => jointId);
    const geometry = { columns: 2, rows: 7, marginX_mm: 4.65, marginY_mm: 15.15, gapX_mm: 2.5, gapY_mm: 0, first: 13 };
    const file = await printSelection(shutdown, shutdown.coordinator, { jointIds, paper: 'tag', geometry });
    expect(file).toMatchObject({ pages: 2, sheets: 3 });
    const pdf = await pdfAt(`/api/v1/files/${file.hash}`, shutdown.coordinator);
    const tagsOn = (page: number) =>
      (pdfPages(pdf)[page] ?? []).map(({ text }) => text).filter((text) => joints.some(({ tag }) => tag === text));
    expect(tagsOn(0)).toEqual([joints[0]?.tag, joints[1]?.tag]);
    expect(tagsOn(1)).toEqual([joints[2]?.tag]);
    const again = await printSelection(shutdown, shutdown.coordinator, { jointIds, paper: 'tag', geometry });
    expect(again.hash).toBe(file.hash);
  });

  it('is refused on labels that nobody could scan', async () => {
    const { jointId } = await listJoint(shutdown);
    const geometry = { columns: 4, rows: 13, marginX_mm: 20, marginY_mm: 20 };
    const { status, body } = await shutdown.coordinator.agent
      .post(`${base()}/sheets`)
      .send({ jointIds: [jointId], paper: 'tag', geometry });
    expect(status).toBe(400);
    expect(body.detail).toContain('The labels would be 42.5 × 19.8 mm');
  });
});

describe('the record form', () => {
  it('has boxes for every part of the work, and says what the record has already', async () => {
    const joint = await listJoint(shutdown);
    await engineer(shutdown, joint);
    const { target } = await makeState(shutdown, joint);
    const text = await textOf(`/joints/${joint.jointId}/record-form.pdf`);
    for (const part of ['Opening', 'Faces', 'Nipping up', 'Passes', 'Final round', 'Gap, mm, at bolt 1'])
      expect(text).toContain(part);
    expect(text).toContain(`${Math.round(target?.torque_Nm ?? Number.NaN)} N·m`);
    expect(text).toContain('1 7 4 10');
    expect(text).toContain('Prove isolation and zero energy twice');
    const open = await taleTo(shutdown, 'open');
    const later = await textOf(`/joints/${open.jointId}/record-form.pdf`);
    expect(later).toContain('Opening – in the record when this was printed');
    expect(later).not.toContain('Zero energy, check 1');
  });

  it('is printed for a selection, a page each', async () => {
    const joints = [await listJoint(shutdown), await listJoint(shutdown)];
    const jointIds = joints.map(({ jointId }) => jointId);
    const file = await printSelection(shutdown, shutdown.coordinator, { jointIds, paper: 'record-form' });
    const pages = pdfPages(await pdfAt(`/api/v1/files/${file.hash}`, shutdown.coordinator));
    expect(pages.map((page) => page[0]?.text)).toEqual(joints.map(({ tag }) => tag));
  });

  it('goes with the fact that is entered from it, into the history and the record', async () => {
    const tale = await taleTo(shutdown, 'released');
    const hash = await storePhoto(shutdown.technician, '#eeeeee');
    const at = shutdown.plant.now.toISOString();
    // Written down at noon without power, entered two hours later.
    wait(shutdown, 120);
    await tale.tell('opened', { paperForm: hash, at });
    const { body } = await shutdown.technician.agent.get(`${base()}/joints/${tale.jointId}`).expect(200);
    expect(body.history[0]).toMatchObject({ type: 'opened', paperForm: hash, workTime: at });
    expect(await tale.stage()).toBe('open');
  });

  it('must be stored first, and no decision is made from it', async () => {
    const tale = await taleTo(shutdown, 'released');
    const unknown = await tale.say('opened', { paperForm: 'a'.repeat(64), payload: openingBy(shutdown) });
    expect(unknown.status).toBe(400);
    expect(unknown.body.detail).toContain('The site holds no file');
    const hash = await storePhoto(shutdown.technician);
    const engineered = await taleTo(shutdown, 'engineered');
    const decision = await engineered.say('break-released', { paperForm: hash });
    expect(decision.status).toBe(400);
    expect(decision.body.detail).toContain('Only facts');
  });
});

describe('the test sheet', () => {
  let tale: Tale;
  const sheet = (query = '') => textOf(`/packs/${tale.packId}/test-sheet.pdf${query}`);
  beforeAll(async () => {
    tale = await taleTo(shutdown, 'checked');
  });

  it('before the release says that there is no pressure, and what stands against it', async () => {
    const text = await sheet();
    expect(text).toContain('NOT RELEASED TO PRESSURE');
    expect(text).toContain('the release is not signed');
    expect(text).toContain('30 bar (435 psi), gauge; as entered: 30 bar');
    expect(text).toContain('Inside the test (1)');
    expect(text).toContain(tale.joint.tag);
    expect(text).toContain('Never tighten a joint under pressure');
  });

  it('after the reading has release, gauge with its calibration, reading and result', async () => {
    await tale.goOn('tested', 'checked');
    const text = await sheet();
    expect(text).not.toContain('NOT RELEASED');
    const { rows } = await shutdown.plant.db.query<{ tag: string; through: string; number: string }>(
      `SELECT t.tag, to_char(c.valid_through, 'FMDD Mon YYYY') AS through, c.certificate_number AS number FROM tool t
        JOIN calibration c USING (site_id, tool_id) WHERE t.tool_id = $1`,
      [shutdown.gaugeId],
    );
    for (const value of Object.values(rows[0] ?? { none: 'no gauge' })) expect(text).toContain(value);
    expect(text).toContain('no leak');
    expect(text).toContain('Boundary walked yes');
  });

  it('computes the distance to keep from the volume of gas, and never without it', async () => {
    const { plant, coordinator, shutdownId, areaId } = shutdown;
    const { systemId } = tale;
    const packId = tale.packId.replace(/.$/, (last) => (last === '0' ? '1' : '0'));
    const plan = { packId, number: 'TP-GAS', systemId, areaId, way: 'pneumatic-test', medium: 'nitrogen' } as const;
    accepted(
      await command(plant, coordinator, shutdownId, 'pack-planned', packId, {
        ...plan,
        pressure_MPa: 1,
        pressureAsEntered: null,
        hold_min: 10,
        plannedOn: null,
      }),
    );
    const without = await textOf(`/packs/${packId}/test-sheet.pdf`);
    expect(without).toContain('NOT COMPUTED: the volume of gas was not given.');
    // 2.5 · 1.101 MPa · 10 m³ · (1 − (0.101 / 1.101)^0.286) = 13.6 MJ; 20·(2·13.6 / 4.26692)^⅓ = 37.1 m, up to the metre.
    const withVolume = await textOf(`/packs/${packId}/test-sheet.pdf?volume_m3=10`);
    expect(withVolume).toContain('38 m for 10 m³ of gas (13.6 MJ stored)');
  });
});

describe('the hand-over list', () => {
  it('names what is not zero, and then who offered and who took over', async () => {
    const tale = await taleTo(shutdown, 'checked');
    const path = `/systems/${tale.systemId}/hand-over-list.pdf`;
    const before = await textOf(path);
    expect(before).toContain('NOT READY TO BE HANDED OVER');
    expect(before).toContain(`${tale.joint.tag} (checked)`);
    expect(before).toContain('1 in the register = 0 handed over + 0 proven or done, waiting + 1 not proven');
    await tale.goOn('handed over', 'checked');
    const after = await textOf(path);
    expect(after).not.toContain('NOT READY');
    expect(after).toContain('1 in the register = 1 handed over + 0 proven or done, waiting + 0 not proven');
    expect(after).toMatch(/Offered: .+ \(coordinator\)/);
    expect(after).toMatch(/Taken over: .+ \(operations\)/);
  });
});

describe('the progress report', () => {
  it('has the figures of its screen on one page, in black and white', async () => {
    const left = await taleTo(shutdown, 'first pass');
    const [areas, systems, today] = await Promise.all([
      read<AreasAnswer>(shutdown, shutdown.coordinator, '/areas'),
      read<SystemsAnswer>(shutdown, shutdown.coordinator, '/systems'),
      read<TodayAnswer>(shutdown, shutdown.coordinator, '/today'),
    ]);
    const pdf = await paper('/report.pdf');
    expect(pdfPages(pdf)).toHaveLength(1);
    const text = pdfText(pdf);
    const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);
    const reachedTight = sum(
      areas.rows.flatMap(({ stages }) => [stages.tight, stages.checked, stages.proven, stages['handed-over']]),
    );
    const line = [
      today.total,
      sum(areas.rows.map((row) => row.planned)),
      reachedTight,
      reachedTight - sum(areas.rows.map(({ stages }) => stages.tight)),
      sum(areas.rows.map(({ stages }) => stages.proven + stages['handed-over'])),
      sum(areas.rows.flatMap((row) => row.signOffs.map(({ waiting }) => waiting))),
      today.partTight.length,
      sum(systems.rows.map(({ zeros }) => zeros.unclosedA)),
    ];
    expect(text).toContain(`All areas ${line.join(' ')} `);
    expect(text).toContain(`Joints part tight, not safe for pressure: ${today.partTight.length}`);
    expect(text).toContain(String(today.curve.actual.at(-1)?.count));
    expect(coloursIn(pdf)).toEqual([]);
    // A sheet of a joint left part tight has its sign in the colour of danger, beside the words.
    expect(coloursIn(await paper(`/joints/${left.jointId}/sheet.pdf`))).not.toEqual([]);
    expect((await paper('/report.pdf')).equals(pdf)).toBe(true);
  });
});

describe('the language of paper', () => {
  it('is the one asked for, else the user’s, and English where neither is known', async () => {
    const joint = await listJoint(shutdown);
    expect(await textOf(`/joints/${joint.jointId}/sheet.pdf?language=en`)).toContain('JOINT SHEET');
    await shutdown.technician.agent.get(`${base()}/joints/${joint.jointId}/sheet.pdf?language=tlh`).expect(400);
    await shutdown.technician.agent.put('/api/v1/session/preferences').send({ language: 'nn' });
    expect(await textOf(`/joints/${joint.jointId}/sheet.pdf`)).toContain('JOINT SHEET');
    await shutdown.technician.agent
      .put('/api/v1/session/preferences')
      .send({ language: 'es', units: 'US' })
      .expect(200);
    const text = await textOf(`/joints/${joint.jointId}/sheet.pdf`);
    expect(text).toContain('HOJA DE UNIÓN');
    expect(text).toMatch(/\d,\d+ in\b/);
  });
});
