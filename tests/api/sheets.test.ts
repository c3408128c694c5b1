import type { JointSpecification, Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pdfFonts, pdfPages, pdfText } from './support/pdf-text.ts';
import { accepted, command, engage, type SignedIn, siteCommand } from './support/plant.ts';
import { procedureContent, specification } from './support/sample-plant.ts';
import { type ListedJoint, listJoint, openShutdown, registerTool, type Shutdown } from './support/shutdown.ts';
import { engineer, makeState, onMake } from './support/work.ts';

let shutdown: Shutdown;

beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

const pathOf = ({ jointId }: ListedJoint, query = '') =>
  `/api/v1/shutdowns/${shutdown.shutdownId}/joints/${jointId}/sheet.pdf${query}`;

async function pdfAt(path: string, who: SignedIn = shutdown.technician): Promise<Buffer> {
  const response = await who.agent.get(path).responseType('blob');
  if (response.status !== 200) throw new Error(`${path} answered ${response.status}: ${String(response.body)}`);
  expect(response.headers['content-type']).toBe('application/pdf');
  return response.body as Buffer;
}

const sheet = (joint: ListedJoint, query = '') => pdfAt(pathOf(joint, query));

/**
 * Numbers of the plan as drawn: each digit of a drawing is a run of its own, bolts come clockwise from the datum and
 * before the centre. Answers each number with the place of its first digit.
 */
function planNumbers(pdf: Buffer, page: number, count: number): { label: number; x: number; y: number }[] {
  const digits = (pdfPages(pdf)[page] ?? []).filter(({ text }) => /^\d$/.test(text));
  const labels: { label: number; x: number; y: number }[] = [];
  let at = 0;
  for (let bolt = 1; bolt <= count; bolt += 1) {
    const length = bolt < 10 ? 1 : bolt < 100 ? 2 : 3;
    const run = digits.slice(at, at + length);
    labels.push({ label: Number(run.map(({ text }) => text).join('')), x: run[0]?.x ?? 0, y: run[0]?.y ?? 0 });
    at += length;
  }
  return labels;
}

/** Three digits, and whole numbers from 100. */
const asPrinted = (value: number | null | undefined): string => {
  const known = value ?? Number.NaN;
  return String(known >= 100 ? Math.round(known) : Number(known.toPrecision(3)));
};

/** A custom flange of any bolt count: its set value is the maker's. */
const custom = (count: number): JointSpecification =>
  specification({
    flange: { standard: 'custom', size: '1200', rating: 'own', facing: 'raised-face' },
    bolting: { count, thread: 'M30', grade: 'B7', nutGrade: '2H', length_mm: 240 },
  });

async function procedureWith(more: Partial<Payload<'procedure-drafted'>['content']>, code: string): Promise<string> {
  const procedureId = uuidv7();
  const content = { ...procedureContent(shutdown.lubricantId), ...more };
  const { plant, engineer: who } = shutdown;
  const drafted = { procedureId, revision: 1, code, title: 'Of the test', content };
  accepted(await siteCommand(plant, who, 'procedure-drafted', procedureId, drafted));
  accepted(await siteCommand(plant, who, 'procedure-approved', procedureId, { revision: 1 }));
  return procedureId;
}

async function makersTorque(joint: ListedJoint, procedureId = shutdown.procedureId): Promise<void> {
  const { must } = onMake(shutdown, joint);
  await must(shutdown.engineer, 'procedure-assigned', { procedureId, revision: 1 });
  await must(shutdown.engineer, 'target-approved', {
    basis: 'makers-torque',
    torque_Nm: 437,
    torqueAsEntered: { value: 437, unit: 'N·m' },
    lubricant: 'test paste',
    source: 'Maker’s manual 77, table 4',
  });
}

describe('the joint sheet', () => {
  test('an engineered joint has its set values, target, limits and place on paper', async () => {
    const joint = await listJoint(shutdown);
    await engineer(shutdown, joint);
    const { target } = await makeState(shutdown, joint);
    const pdf = await sheet(joint);
    const text = pdfText(pdf);
    expect(pdfPages(pdf)).toHaveLength(2);
    for (const { torque_Nm } of target?.passes ?? []) expect(text).toContain(` ${asPrinted(torque_Nm)} `);
    expect(text).toContain(`${Math.round(target?.boltStress_MPa ?? Number.NaN)} MPa`);
    expect(text).toContain('on tensile area');
    expect(text).toContain('target and tool scatter inside the window');
    expect(text).toMatch(/from \d+ \(.*\) to \d+ \(.*\)\s+MPa/);
    expect(text).toContain(joint.tag);
    expect(text).toContain('seen from the pump side');
    expect(text).toContain('Bolt 1 at the top');
    expect(text).toContain('1 7 4 10');
    expect(text).toContain('STOP AND CALL');
    expect(text).toContain('Keep out of the line of fire of the bolts.');
    expect(text).toContain('Prove isolation and zero energy twice');
    expect(text).toContain(`calculation version ${target?.calcVersion}`);
    expect(text).not.toContain('NOT VALID');
  });

  test('every character comes from the fonts that are shipped', async () => {
    const joint = await listJoint(shutdown);
    await engineer(shutdown, joint);
    for (const font of pdfFonts(await sheet(joint))) expect(font).toMatch(/^AtkinsonHyperlegibleNext-/);
  });

  test.each([4, 12, 32, 40])('the plan of %i bolts beside the facts has each number once, clockwise', async (count) => {
    const joint = await listJoint(shutdown, { kind: 'girth', specification: custom(count) });
    await makersTorque(joint);
    const numbers = planNumbers(await sheet(joint), 0, count);
    expect(numbers.map(({ label }) => label)).toEqual(Array.from({ length: count }, (_, index) => index + 1));
    const quarter = numbers[count / 4];
    const half = numbers[count / 2];
    // Bolt 1 stands at the top, a quarter on is to the right, half round is at the bottom.
    expect(Math.max(...numbers.map(({ y }) => y))).toBeCloseTo(numbers[0]?.y ?? 0, 0);
    expect(quarter?.x).toBeGreaterThan(numbers[0]?.x ?? 0);
    expect(half?.y).toBeLessThan(quarter?.y ?? 0);
  });

  test.each([64, 120, 200])('the plan of %i bolts has a page of its own with each number once', async (count) => {
    const procedureId = await procedureWith(
      { appliesTo: { ...procedureContent('').appliesTo, mostBolts: 400 } },
      `BP-${count}`,
    );
    const joint = await listJoint(shutdown, { kind: 'girth', specification: custom(count) });
    await makersTorque(joint, procedureId);
    const pdf = await sheet(joint);
    const numbers = planNumbers(pdf, pdfPages(pdf).length - 1, count);
    expect(numbers.map(({ label }) => label)).toEqual(Array.from({ length: count }, (_, index) => index + 1));
  });

  test('the same record gives the same bytes, and a later printing another time of printing', async () => {
    const joint = await listJoint(shutdown);
    await engineer(shutdown, joint);
    const first = await sheet(joint);
    expect((await sheet(joint)).equals(first)).toBe(true);
    const before = shutdown.plant.now;
    shutdown.plant.now = new Date(before.getTime() + 60_000);
    const later = pdfText(await sheet(joint));
    shutdown.plant.now = before;
    expect(later).not.toBe(pdfText(first));
    expect(later.replaceAll(/printed [\w ]+, [\d:]+/g, '')).toBe(
      pdfText(first).replaceAll(/printed [\w ]+, [\d:]+/g, ''),
    );
  });

  test('without an approved target it says so and carries no set value', async () => {
    const joint = await listJoint(shutdown);
    const { must } = onMake(shutdown, joint);
    await must(shutdown.engineer, 'procedure-assigned', { procedureId: shutdown.procedureId, revision: 1 });
    const text = pdfText(await sheet(joint));
    expect(text).toContain('NOT VALID WITHOUT APPROVED TARGET');
    expect(text).not.toMatch(/\d N·m/);
    expect(text).not.toContain('Target and limits');
    expect(text).toContain('1 30 – – 2 70 – – 3 100 – – Final round 100 – –');
  });

  test('a target whose inputs have changed is not printed', async () => {
    const joint = await listJoint(shutdown);
    await engineer(shutdown, joint);
    const torque = Math.round((await makeState(shutdown, joint)).target?.torque_Nm ?? Number.NaN);
    expect(pdfText(await sheet(joint))).toContain(` ${torque} `);
    const changed = specification({ service: { ...specification().service, pressure_MPa: 3 } });
    accepted(
      await command(
        shutdown.plant,
        shutdown.engineer,
        shutdown.shutdownId,
        'joint-specified',
        joint.jointId,
        {
          specification: changed,
          reason: 'design pressure corrected',
        },
        { versionSeen: 3 },
      ),
    );
    const text = pdfText(await sheet(joint));
    expect(text).toContain('TARGET OUT OF DATE');
    expect(text).not.toContain(` ${torque} `);
  });

  test('an insert joint has two gaskets and four faces, and its purpose is told', async () => {
    const { flange, gasket } = {
      flange: { kind: 'flange', thickness_mm: 39.7, note: null },
      gasket: { kind: 'gasket', thickness_mm: 4.5, note: null },
    } as const;
    const joint = await listJoint(shutdown, {
      kind: 'insert',
      makes: [{ purpose: 'spade-in' }, {}],
      specification: specification({
        gasket: { ...specification().gasket, count: 2 },
        clampedParts: [flange, gasket, { kind: 'spade', thickness_mm: 25, note: 'SP-12' }, gasket, flange],
      }),
    });
    const text = pdfText(await sheet(joint));
    expect(text).toContain('2 × spiral wound');
    expect(text).toContain('Face 4 of 4');
    expect(text).toContain('Gasket 2 of 2');
    expect(text).toContain('NOT THE FINAL MAKE');
    const final = pdfText(await sheet(joint, `?makeId=${joint.makeIds[1]}`));
    expect(final).not.toContain('NOT THE FINAL MAKE');
    expect(final).toContain('2 · final');
  });

  test('the maker’s torque carries its source', async () => {
    const joint = await listJoint(shutdown, { kind: 'machine-nozzle' });
    await makersTorque(joint);
    const text = pdfText(await sheet(joint));
    expect(text).toContain(' 437 ');
    expect(text).toContain('Maker’s manual 77, table 4');
    expect(text).toContain('Shaft movement while bolting');
    expect(text).not.toContain('Bolt stress');
  });

  test('a hold stands on the sheet', async () => {
    const joint = await listJoint(shutdown);
    accepted(
      await command(shutdown.plant, shutdown.inspector, shutdown.shutdownId, 'hold-placed', joint.jointId, {
        holdId: uuidv7(),
        reason: 'gasket of the wrong class delivered',
        releasedBy: 'inspector',
      }),
    );
    const text = pdfText(await sheet(joint));
    expect(text).toContain('ON HOLD');
    expect(text).toContain('gasket of the wrong class delivered');
  });

  test('pump pressures are printed for the tool and gauge that are named, and need both', async () => {
    const { plant, inspector } = shutdown;
    const [toolId, gaugeId] = [uuidv7(), uuidv7()];
    await registerTool(plant, inspector, toolId, 'HW-9', 'hydraulic-wrench', 2000, 'N·m', {
      pairs: [
        { pressure_MPa: 1, torque_Nm: 20 },
        { pressure_MPa: 70, torque_Nm: 1400 },
      ],
    });
    accepted(
      await siteCommand(plant, inspector, 'tool-registered', gaugeId, {
        toolId: gaugeId,
        tag: 'PG-9',
        kind: 'pressure-gauge',
        maker: null,
        scaleMinimum: null,
        scaleMaximum: 100,
        scaleUnit: 'MPa',
        scaleDivision: 0.5,
      }),
    );
    const joint = await listJoint(shutdown);
    await makersTorque(joint, await procedureWith({ method: 'hydraulic-wrench' }, 'BP-HW'));
    const query = `?toolId=${toolId}&gaugeId=${gaugeId}`;
    const uncalibrated = await shutdown.technician.agent.get(pathOf(joint, query));
    expect(uncalibrated.status).toBe(400);
    const calibrationId = uuidv7();
    accepted(
      await siteCommand(plant, inspector, 'calibration-recorded', gaugeId, {
        calibrationId,
        toolId: gaugeId,
        calibratedOn: '2026-10-01',
        validThrough: '2027-10-01',
        certificate: null,
        certificateNumber: 'C-PG-9',
        provisional: false,
        pairs: [],
      }),
    );
    // 437 N·m is at 21.85 MPa; the mark of the gauge is 22 MPa, which gives 440 N·m.
    expect(pdfText(await sheet(joint, query))).toMatch(/220 bar \/ 3191 psi\s+\(440 N·m\)/);
    expect((await shutdown.technician.agent.get(pathOf(joint, `?toolId=${toolId}`))).status).toBe(400);
  });

  test('nobody without a role or a session has it; another shutdown’s joint is unknown', async () => {
    const joint = await listJoint(shutdown);
    const stranger = await engage(shutdown.plant, 'technician', 'Stran Ger', {
      reach: { kind: 'shutdown', id: shutdown.shutdownId },
    });
    const { rows } = await shutdown.plant.db.query<{ grant_id: string }>(
      'SELECT grant_id FROM role_grant WHERE account_id = $1',
      [stranger.accountId],
    );
    await pdfAt(pathOf(joint), stranger);
    const grantId = rows[0]?.grant_id ?? '';
    const { plant } = shutdown;
    accepted(await siteCommand(plant, plant.administrator, 'role-ended', grantId, { reason: 'left' }));
    expect((await stranger.agent.get(pathOf(joint))).status).toBe(403);
    expect(
      (await stranger.agent.post(`/api/v1/shutdowns/${shutdown.shutdownId}/sheets`).send({ jointIds: [joint.jointId] }))
        .status,
    ).toBe(403);
    await shutdown.technician.agent.get(pathOf({ ...joint, jointId: uuidv7() })).expect(404);
  });
});

describe('sheets of a selection', () => {
  const printed = async (jointIds: readonly string[]) => {
    const started = await shutdown.coordinator.agent
      .post(`/api/v1/shutdowns/${shutdown.shutdownId}/sheets`)
      .send({ jointIds })
      .expect(202);
    for (;;) {
      const { body } = await shutdown.coordinator.agent.get(`/api/v1/jobs/${started.body.jobId}`).expect(200);
      if (body.state === 'done' || body.state === 'failed') return body;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  };

  test('they are printed in the order of the selection, each counting its own pages', async () => {
    const joints = [await listJoint(shutdown), await listJoint(shutdown), await listJoint(shutdown)];
    for (const joint of joints.slice(0, 2)) await engineer(shutdown, joint);
    const asked = [...joints].reverse();
    const job = await printed(asked.map(({ jointId }) => jointId));
    expect(job).toMatchObject({ state: 'done', done: 3, total: 3 });
    const { file } = job.result;
    expect(file).toMatchObject({ sheets: 3, firstTag: asked[0]?.tag, lastTag: asked[2]?.tag });
    const pdf = await pdfAt(`/api/v1/files/${file.hash}`);
    const pages = pdfPages(pdf);
    expect(pages).toHaveLength(file.pages);
    const firstPages = pages.filter((page) => page.some(({ text }) => text.startsWith('page 1 of 2')));
    expect(firstPages.map((page) => page[0]?.text)).toEqual(asked.map(({ tag }) => tag));
    const again = await printed(asked.map(({ jointId }) => jointId));
    expect(again.result.file.hash).toBe(file.hash);
  });

  test('a long selection comes in one file, in order', async () => {
    const joints: ListedJoint[] = [];
    for (let index = 0; index < 53; index += 1) joints.push(await listJoint(shutdown));
    const { file } = (await printed(joints.map(({ jointId }) => jointId))).result;
    expect(file).toMatchObject({ sheets: 53, pages: 106 });
    const pages = pdfPages(await pdfAt(`/api/v1/files/${file.hash}`));
    expect(pages.filter((_, index) => index % 2 === 0).map((page) => page[0]?.text)).toEqual(
      joints.map(({ tag }) => tag),
    );
  });

  test('an unknown joint or an empty selection starts nothing', async () => {
    const path = `/api/v1/shutdowns/${shutdown.shutdownId}/sheets`;
    const { agent } = shutdown.coordinator;
    expect((await agent.post(path).send({ jointIds: [uuidv7()] })).status).toBe(404);
    expect((await agent.post(path).send({ jointIds: [] })).status).toBe(400);
  });
});

describe('the hand-out of a pre-job talk', () => {
  const handOut = (query = '') => pdfAt(`/api/v1/procedures/${shutdown.procedureId}/revisions/1/hand-out.pdf${query}`);

  test('it has numbering, picture, passes, cautions and an attendance list, and no set value', async () => {
    const pdf = await handOut();
    const text = pdfText(pdf);
    expect(text).toContain('BP-01 rev 1');
    expect(text).toContain('Pass 2: 70 % of the torque on the joint sheet');
    expect(text).toContain('clockwise: bolt 1 at the datum');
    expect(text).toContain('Keep out of the line of fire of the bolts.');
    expect(text).toContain('Who was at this talk');
    expect(text).not.toMatch(/\d N·m/);
    expect((await handOut()).equals(pdf)).toBe(true);
  });

  test('it is drawn for the bolts that the talk is about', async () => {
    const pdf = await handOut('?bolts=16');
    const page = pdfPages(pdf).findIndex((runs) => runs.filter(({ text }) => /^\d$/.test(text)).length >= 16);
    expect(planNumbers(pdf, page, 16).map(({ label }) => label)).toEqual(Array.from({ length: 16 }, (_, i) => i + 1));
    expect(pdfText(pdf)).toContain('1 9 5 13');
  });

  test('a draft says that nobody works to it', async () => {
    const procedureId = uuidv7();
    const { plant, engineer: who } = shutdown;
    const content = procedureContent(shutdown.lubricantId);
    accepted(
      await siteCommand(plant, who, 'procedure-drafted', procedureId, {
        procedureId,
        revision: 1,
        code: 'BP-DRAFT',
        title: 'Not yet',
        content,
      }),
    );
    const text = pdfText(await pdfAt(`/api/v1/procedures/${procedureId}/revisions/1/hand-out.pdf`));
    expect(text).toContain('DRAFT – NOT APPROVED');
  });
});
