import type { Page } from 'playwright-core';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, siteCommand } from '../api/support/plant.ts';
import { type ListedJoint, listJoint, registerTool } from '../api/support/shutdown.ts';
import { holdTalk } from '../api/support/talk.ts';
import { tensionerProcedure, tensionerTools } from '../api/support/tensioning.ts';
import { engineer, makeState, onMake, openAndNipUp, openingBy, release, tighten } from '../api/support/work.ts';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { hoursAgo, procedureFor } from './support/crew-plant.ts';
import { button, inDialog } from './support/dialogs.ts';
import { desk, phone } from './support/gallery.ts';
import { picture } from './support/running-plant.ts';
import { settled, watchedPage } from './support/watched-page.ts';

let plant: BuiltPlant;
let page: Page;
let complaints: string[];

async function nippedUp(procedureId = plant.shutdown.procedureId): Promise<ListedJoint> {
  const joint = await listJoint(plant.shutdown);
  await engineer({ ...plant.shutdown, procedureId }, joint);
  await release(plant.shutdown, joint);
  await openAndNipUp(plant.shutdown, joint);
  return joint;
}

async function tight(): Promise<ListedJoint> {
  const joint = await nippedUp();
  await tighten(plant.shutdown, joint);
  return joint;
}

const stage = async (joint: ListedJoint) => (await makeState(plant.shutdown, joint)).stage;
const work = (joint: ListedJoint, task: string) => plant.at(`/joints/${joint.jointId}/work?do=${task}`);
const go = async (address: string) => {
  await page.goto(address);
  await settled(page);
};
const as = async (role: string, size: typeof desk) => {
  await page?.context().close();
  ({ page, complaints } = await watchedPage(await plant.contextOf(role, size)));
  page.setDefaultTimeout(10_000);
};
const everyBolt = async () => {
  const done = button(page, /^Bolts? [\d, ]+ done$/);
  while (await done.isVisible()) await done.click();
};

beforeAll(async () => {
  plant = await openBuiltPlant();
  await hoursAgo(plant, 7, () => holdTalk(plant.shutdown));
});
afterAll(() => plant?.close());

describe('tools that work by oil', () => {
  it('a hydraulic wrench is set by its pump, and the torque that results is said', async () => {
    const { shutdown } = plant;
    const { plant: server, inspector } = shutdown;
    const procedureId = await procedureFor(plant, 'BP-HW', 'hydraulic-wrench');
    const pairs = [2, 10, 20, 40].map((pressure_MPa) => ({ pressure_MPa, torque_Nm: pressure_MPa * 20 }));
    await registerTool(server, inspector, uuidv7(), 'HW-1', 'hydraulic-wrench', 800, 'N·m', { pairs });
    await registerTool(server, inspector, uuidv7(), 'PU-1', 'pump', 70, 'MPa');
    const gaugeId = uuidv7();
    accepted(
      await siteCommand(server, inspector, 'tool-registered', gaugeId, {
        toolId: gaugeId,
        tag: 'GA-1',
        kind: 'pressure-gauge',
        maker: null,
        scaleMinimum: null,
        scaleMaximum: 70,
        scaleUnit: 'MPa',
        scaleDivision: 0.5,
      }),
    );
    accepted(
      await siteCommand(server, inspector, 'calibration-recorded', gaugeId, {
        calibrationId: uuidv7(),
        toolId: gaugeId,
        calibratedOn: '2026-10-01',
        validThrough: '2027-10-01',
        certificate: null,
        certificateNumber: 'C-GA-1',
        provisional: false,
        pairs: [],
      }),
    );
    const joint = await nippedUp(procedureId);
    await as('technician', phone);
    await go(plant.at(`/joints/${joint.jointId}/tighten`));
    await page.getByLabel('Mara Mate').check();
    for (const tag of [/HW-1/, /PU-1/, /GA-1/]) await page.getByLabel(tag).check();
    await picture(page, 'hydraulic-setup');
    await page.getByText(/Gives .* by the wrench’s certificate/).waitFor();
    await picture(page, 'hydraulic-setup');
    await button(page, 'Begin pass 1').click();
    await picture(page, 'hydraulic-running');
    await everyBolt();
    await button(page, 'Record the pass').click();
    await button(page, 'Begin pass 2').waitFor();
    await expect.poll(async () => (await makeState(shutdown, joint)).passes.length).toBe(1);
    const pass = (await makeState(shutdown, joint)).passes[0];
    expect(pass?.set.asEntered.unit).toBe('bar');
    // 20 N·m to the MPa by the wrench's own pairs, at a mark of the gauge.
    expect(pass?.set.torque_Nm).toBeCloseTo((pass?.set.asEntered.value ?? 0) * 2, 6);
    expect(complaints).toEqual([]);
  });

  it('a tensioner is worked group by group, each with its own pressure, and checked at the last', async () => {
    const { shutdown } = plant;
    const procedureId = await tensionerProcedure(shutdown, 'BP-TN');
    const { toolId } = await tensionerTools(shutdown, ['TN-1', 'PU-2', 'GA-2']);
    const joint = await listJoint(shutdown);
    await onMake(shutdown, joint).must(shutdown.engineer, 'procedure-assigned', { procedureId, revision: 1 });
    await as('engineer', desk);
    await go(plant.at(`/joints/${joint.jointId}/target`));
    await page.getByLabel('Gasket data').selectOption(shutdown.gasketDataId);
    await page.getByLabel('Lubricant', { exact: true }).selectOption(shutdown.lubricantId);
    await page.getByLabel(/^Bolt stress/).fill('250');
    await page.getByLabel('Tensioner').selectOption(toolId);
    await page.getByLabel(/^Division of the pump/).fill('5');
    await page.getByText('Pressures for TN-1, 50 % of the bolts at once').waitFor();
    await picture(page, 'tensioner-target');
    await button(page, 'Approve the target').click();
    await inDialog(page, 'Sign', (dialog) => dialog.getByLabel(/password/i).fill('a long test secret'));
    await expect.poll(() => stage(joint)).toBe('engineered');
    const plan = (await makeState(shutdown, joint)).target?.tensioning;
    expect(plan?.groups).toHaveLength(2);
    await release(shutdown, joint);
    await openAndNipUp(shutdown, joint);
    await as('technician', phone);
    await go(plant.at(`/joints/${joint.jointId}/tighten`));
    await page.getByLabel('Mara Mate').check();
    await page.getByText('Stay out of the line of fire of the tensioners').waitFor();
    for (const tag of [/TN-1/, /PU-2/, /GA-2/]) await page.getByLabel(tag).check();
    await picture(page, 'tensioner-setup');
    const bar = (pressure_MPa = Number.NaN) => Math.round(pressure_MPa * 100) / 10;
    for (const [index, { groupPressures_MPa }] of (plan?.passes ?? []).entries()) {
      await button(page, `Begin pass ${index + 1}`).click();
      for (const [group, pressure] of groupPressures_MPa.entries()) {
        const letter = 'AB'.charAt(group);
        await page.getByText(`Group ${letter}: raise the pump to ${bar(pressure)} bar, run the nuts down`).waitFor();
        await picture(page, `tensioner-pass-${index + 1}-${letter}`);
        await button(page, group === 0 ? 'Bolts 1, 3, 5, 7, 9, 11 done' : 'Bolts 2, 4, 6, 8, 10, 12 done').click();
      }
      await button(page, 'Record the pass').click();
    }
    await button(page, 'Begin the final round').click();
    const last = bar(plan?.passes.at(-1)?.groupPressures_MPa.at(-1));
    await page.getByText(`Group A: raise the pump to ${last} bar, see whether a nut`).waitFor();
    await picture(page, 'tensioner-check');
    await everyBolt();
    await button(page, 'No nut moved').click();
    await expect.poll(() => stage(joint)).toBe('tight');
    const passes = (await makeState(shutdown, joint)).passes;
    expect(passes.map(({ set }) => set.asEntered)).toEqual(
      plan?.passes.map(({ groupPressures_MPa }) => ({ value: bar(groupPressures_MPa[0]), unit: 'bar' })),
    );
    expect(passes[0]?.set.pressure_MPa).toBeCloseTo(plan?.passes[0]?.groupPressures_MPa[0] ?? 0, 9);
    await go(plant.at(`/joints/${joint.jointId}`));
    await picture(page, 'tensioner-joint');
    expect(complaints).toEqual([]);
  });
});

describe('after a joint is tight', () => {
  it('the relaxation pass is made with the count of nuts that moved', async () => {
    const { shutdown } = plant;
    let joint: ListedJoint | undefined;
    await hoursAgo(plant, 6, async () => {
      joint = await listJoint(shutdown, { criticality: 'A' });
      await engineer(shutdown, joint);
      await release(shutdown, joint);
      await openAndNipUp(shutdown, joint);
      await tighten(shutdown, joint);
    });
    if (!joint) throw new Error('No joint was listed.');
    await go(plant.at(`/joints/${joint.jointId}/work`));
    await picture(page, 'relaxation-due');
    await button(page, /bolt plan/).click();
    await page.getByLabel(/TW-1/).check();
    await button(page, 'Begin the relaxation pass').click();
    await everyBolt();
    await page.getByLabel('Nuts that moved').fill('2');
    await picture(page, 'relaxation');
    await button(page, 'Record the relaxation pass').click();
    await expect.poll(async () => (await makeState(shutdown, joint as ListedJoint)).relaxationDone).toBe(true);
    expect(complaints).toEqual([]);
  });

  it('a replaced stud and loosened bolts send it back, and a leak stands against it', async () => {
    const joint = await tight();
    await go(work(joint, 'stud'));
    await page.getByLabel('Studs replaced').fill('3, 99');
    await page.getByText(/Write bolt numbers from 1 to 12/).waitFor();
    await page.getByLabel('Studs replaced').fill('3, 7-8');
    await page.getByLabel('Reason').fill('Thread damaged');
    await picture(page, 'stud');
    await button(page, 'Record the stud').click();
    await expect.poll(() => stage(joint)).toBe('part-tight');
    expect((await makeState(plant.shutdown, joint)).studsReplaced).toEqual([3, 7, 8]);
    for (const [extent, to] of [
      ['Some bolts', 'part-tight'],
      ['All bolts', 'nipped-up'],
    ] as const) {
      await go(work(joint, 'loosen'));
      await page.getByLabel('Read, and told').check();
      await page.getByLabel(extent).check();
      if (extent === 'Some bolts') await page.getByLabel('Bolts loosened').fill('1');
      await page.getByLabel('Reason').fill('Spool does not line up');
      await picture(page, `loosen-${to}`);
      await button(page, 'Record as loosened').click();
      await expect.poll(() => stage(joint)).toBe(to);
    }
    expect((await makeState(plant.shutdown, joint)).retighten).toBe(true);
    const leaking = await tight();
    await go(work(leaking, 'leak'));
    await page.getByLabel('At start-up').check();
    await page.getByLabel(/Where on the flange/).fill('between bolts 3 and 4');
    await page.getByLabel('What was seen').fill('Drips');
    await picture(page, 'leak');
    await button(page, 'Record the leak').click();
    await expect.poll(async () => (await makeState(plant.shutdown, leaking)).leaking).toBe(true);
    await picture(page, 'leak-after');
    await go(plant.at(`/joints/${leaking.jointId}`));
    await page
      .getByText(/leaking/)
      .first()
      .waitFor();
    await page
      .getByText(/A item/)
      .first()
      .waitFor();
    await picture(page, 'leak-joint');
    expect(complaints).toEqual([]);
  });
});

describe('a form', () => {
  it('asks for two persons who prove zero energy, and survives the end of the session', async () => {
    const joint = await listJoint(plant.shutdown);
    await engineer(plant.shutdown, joint);
    await release(plant.shutdown, joint);
    await as('technician', phone);
    await go(work(joint, 'open'));
    await page.getByLabel('Read, and told').check();
    const who = page.getByLabel('Who', { exact: true });
    await who.nth(0).selectOption({ label: 'Theo Technician' });
    expect(await who.nth(1).locator('option').allTextContents()).toEqual(['Not chosen', 'Mara Mate', 'Chas Hand']);
    await who.nth(1).selectOption({ label: 'Mara Mate' });
    await page.getByLabel('How', { exact: true }).nth(0).fill('vent open');
    await page.getByLabel('How', { exact: true }).nth(1).fill('drain open');
    await page.getByLabel('Remark').fill('Scale at the far side');
    const cookies = await page.context().cookies();
    await page.context().clearCookies();
    await page.locator('input[type=file]').setInputFiles({
      name: 'open.png',
      mimeType: 'image/png',
      buffer: await page.screenshot(),
    });
    await page.getByRole('dialog', { name: 'The session has ended' }).waitFor();
    await picture(page, 'session-ended');
    await inDialog(page, 'Sign in again', (dialog) => dialog.getByLabel('Password').fill('a long test secret'));
    expect(await page.getByLabel('Remark').inputValue()).toBe('Scale at the far side');
    await button(page, 'Send it again').click();
    // A record that meets the end of the session waits for the sign-in, and goes by itself.
    await page.context().clearCookies();
    await button(page, 'Record as open').click();
    await inDialog(page, 'Sign in again', (dialog) => dialog.getByLabel('Password').fill('a long test secret'));
    await page.getByRole('heading', { name: 'Inspect the faces' }).waitFor();
    await expect.poll(() => stage(joint)).toBe('open');
    expect(complaints.filter((each) => !each.includes('401'))).toEqual([]);
    await page.context().clearCookies();
    await page.context().addCookies(cookies);
  });

  it('is not offered on a joint without work', async () => {
    const joint = await listJoint(plant.shutdown);
    const { shutdown } = plant;
    await onMake(shutdown, joint).must(shutdown.coordinator, 'joint-voided', {
      why: 'not-opened',
      reason: 'Taken out of the scope',
    });
    await as('engineer', desk);
    await go(plant.at(`/joints/${joint.jointId}`));
    await page
      .getByText(/Taken out of the scope/)
      .first()
      .waitFor();
    await picture(page, 'voided');
    for (const name of ['Work on it', 'Set the target', 'Assign the procedure'])
      expect(await button(page, name).count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});

describe('what was wrong in the record', () => {
  it('a fact is corrected, both stay, and the wrong one is struck through', async () => {
    const joint = await nippedUp();
    await as('technician', desk);
    await go(plant.at(`/joints/${joint.jointId}`));
    const entry = page.getByRole('listitem').filter({ hasText: 'Gasket and bolts in' });
    await button(entry, 'Correct').click();
    await inDialog(page, 'Correct', async (dialog) => {
      // Codes of the contract are chosen, never typed.
      await dialog.getByLabel(/bolting · condition/).selectOption({ label: 'reused' });
      await dialog.getByLabel(/bolting · condition/).selectOption({ label: 'new' });
      await picture(page, 'correct');
      await dialog.getByLabel(/batch/i).fill('27-0999');
      await dialog.getByLabel('Why it was wrong').fill('Read from the wrong bag');
    });
    await page.getByText(/A record was corrected: Read from the wrong bag/).waitFor();
    await page
      .getByText(/corrected/i)
      .nth(1)
      .waitFor();
    await picture(page, 'corrected');
    expect((await makeState(plant.shutdown, joint)).fitted?.batch).toBe('27-0999');
    expect(complaints).toEqual([]);
  });

  it('a decision is revoked under a signature', async () => {
    const joint = await listJoint(plant.shutdown);
    await engineer(plant.shutdown, joint);
    await as('engineer', phone);
    await go(plant.at(`/joints/${joint.jointId}`));
    const entry = page.getByRole('listitem').filter({ hasText: /Target approved/ });
    await button(entry, 'Revoke').click();
    await inDialog(page, 'Sign', async (dialog) => {
      await dialog.getByLabel('Reason').fill('Gasket of another maker');
      await dialog.getByLabel(/password/i).fill('a long test secret');
      await picture(page, 'revoke');
    });
    await expect.poll(() => stage(joint)).toBe('planned');
    await page.getByText(/A decision was revoked: Gasket/).waitFor();
    await picture(page, 'revoked');
    expect(complaints).toEqual([]);
  });

  it.each([
    ['Accept it', 'open'],
    ['Reject it as not done', 'released'],
  ])('a record that waits for review is settled: %s', async (outcome, then) => {
    const { shutdown } = plant;
    const joint = await listJoint(shutdown);
    await engineer(shutdown, joint);
    await release(shutdown, joint);
    const once = { ...openingBy(shutdown), zeroEnergyChecks: openingBy(shutdown).zeroEnergyChecks.slice(0, 1) };
    await onMake(shutdown, joint).must(shutdown.technician, 'opened', once, { alreadyDone: true });
    await as('inspector', outcome === 'Accept it' ? desk : phone);
    await go(plant.at('/reviews'));
    await picture(page, `reviews-${then}`);
    await page.getByRole('link', { name: joint.tag }).click();
    await button(page, 'Settle the review').first().click();
    await inDialog(page, 'Sign', async (dialog) => {
      await dialog.getByRole('radio', { name: new RegExp(`^${outcome}(?! with)`) }).check();
      await dialog.getByLabel('Reason').fill('Seen on site');
      await dialog.getByLabel(/password/i).fill('a long test secret');
      await picture(page, `settle-${then}`);
    });
    await expect.poll(() => stage(joint)).toBe(then);
    expect((await makeState(shutdown, joint)).waiting).toEqual([]);
    await page.getByText(/Review settled: Seen on site/).waitFor();
    await picture(page, `settled-${then}`);
    expect(complaints).toEqual([]);
  });
});
