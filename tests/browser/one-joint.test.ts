import type { Page } from 'playwright-core';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PASSWORD } from '../api/support/plant.ts';
import { type ListedJoint, listJoint } from '../api/support/shutdown.ts';
import { engineer, makeState, onMake, release } from '../api/support/work.ts';
import { desk, phone } from './support/gallery.ts';
import { openRunningPlant, picture, type RunningPlant } from './support/running-plant.ts';

let plant: RunningPlant;
let joint: ListedJoint;
const stage = async () => (await makeState(plant.shutdown, joint)).stage;

beforeAll(async () => {
  plant = await openRunningPlant();
  joint = await listJoint(plant.shutdown);
  await engineer(plant.shutdown, joint);
});
afterAll(() => plant?.close());

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

async function sign(page: Page, label: string): Promise<void> {
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel(/password/i).fill(PASSWORD);
  await dialog.getByRole('button', { name: label }).click();
  await dialog.waitFor({ state: 'detached' });
}

async function recordOpening(page: Page): Promise<void> {
  await page.getByLabel('Read, and told to everybody at this joint').check();
  const who = page.getByLabel('Who', { exact: true });
  await who.nth(0).selectOption({ label: 'Theo Technician' });
  await who.nth(1).selectOption({ label: 'Mara Mate' });
  const how = page.getByLabel('How', { exact: true });
  await how.nth(0).fill('vent open, gauge at zero');
  await how.nth(1).fill('drain open, no flow');
  await page.getByLabel('Open ends are covered').check();
  await button(page, 'Record as open').click();
}

describe('one joint, by those who work it, each at their own screen', () => {
  let operations: Page;
  let technician: Page;

  it('is released to break by operations, under a permit that they record', async () => {
    operations = await plant.signIn(plant.shutdown.operations, desk);
    await operations.goto(plant.at('/my-joints'));
    await button(operations, 'Look and sign').click();
    await operations.getByLabel(joint.tag).check();
    await operations.getByLabel('Record a permit').check();
    await operations.getByLabel('Number of the permit').fill('PTW-4101');
    await operations.getByLabel('Isolation reference').fill('ISO-41-7');
    await operations.getByLabel('Valid for').fill('24');
    await picture(operations, '01-release');
    await button(operations, /Record the permit/).click();
    await operations.getByLabel(/PTW-4101/).waitFor();
    await button(operations, 'Look and release').click();
    await picture(operations, '02-release-sign');
    await sign(operations, 'Sign');
    await operations.getByText('1 joint signed').waitFor();
    expect(await stage()).toBe('released');
  });

  it('is opened once zero energy is proven twice and the caution is read', async () => {
    technician = await plant.signIn(plant.shutdown.technician, phone);
    await technician.goto(plant.at('/my-joints'));
    await button(technician, 'Open the joint').waitFor();
    await picture(technician, '03-my-joints');
    await button(technician, 'Open the joint').click();
    await button(technician, 'Record as open').waitFor();
    await picture(technician, '04-open');
    await recordOpening(technician);
    await technician.getByRole('heading', { name: 'Inspect the faces' }).waitFor();
    expect(await stage()).toBe('open');
  });

  it('has its faces accepted one by one', async () => {
    await picture(technician, '05-faces');
    for (const face of [0, 1]) {
      await technician.getByLabel('Condition', { exact: true }).nth(face).selectOption({ label: 'clean' });
      await technician
        .getByLabel(/Out of flat/)
        .nth(face)
        .fill('0.05');
      await technician.getByLabel('Accept this face').nth(face).check();
    }
    await technician.getByLabel('new', { exact: true }).check();
    await technician.getByLabel(/^Accepted/).check();
    await button(technician, 'Record faces accepted').click();
    await technician.getByRole('heading', { name: 'Fit the gasket and nip up' }).waitFor();
    expect(await stage()).toBe('faces-accepted');
  });

  it('is nipped up with what the marking says, and a wrong gasket is stopped on the spot', async () => {
    await technician.getByLabel('Kind of gasket').selectOption({ label: 'spiral wound' });
    await technician.getByLabel('Class on the marking').selectOption({ label: '600' });
    await technician.getByRole('heading', { name: 'This is not the gasket of this joint' }).waitFor();
    await picture(technician, '06-nip-up-wrong');
    await technician.getByLabel('Class on the marking').selectOption({ label: '300' });
    await technician.getByLabel('Size on the marking').fill('NPS 8');
    await technician.getByRole('option', { name: 'NPS 8', exact: true }).click();
    await technician.getByLabel('Purpose on tag or kit').selectOption({ label: 'final' });
    await technician.getByLabel('Gaskets that are in').fill('1');
    await technician.getByLabel('Batch or kit number').fill('27-0417');
    await technician.getByLabel('Grade stamped on the studs').fill('B7');
    await technician.getByRole('option', { name: 'B7', exact: true }).click();
    await technician.getByLabel('Bolts fitted').fill('12');
    await technician.getByLabel('new', { exact: true }).check();
    await technician.getByLabel(/test paste/).check();
    await technician.getByLabel(/Out of parallel/).fill('0.3');
    await technician.getByLabel(/Offset of/).fill('0.5');
    await technician.getByLabel(/Rotation of/).fill('1');
    await technician.getByLabel(/Force to pull/).fill('3');
    for (const point of [/^At bolt 1/, /^A quarter on/, /^Opposite bolt 1/, /^Three quarters/])
      await technician.getByLabel(point).fill('3.0');
    await picture(technician, '07-nip-up');
    await button(technician, 'Record as nipped up').click();
    await technician.getByRole('heading', { name: 'Tighten', exact: true }).waitFor();
    expect(await stage()).toBe('nipped-up');
  });

  const bolts = async (page: Page) => {
    const done = button(page, /^Bolt \d+ done$/);
    while (await done.isVisible()) await done.click();
  };
  const begin = async (page: Page, name: string) => {
    await page.getByLabel('Mara Mate').check();
    await page.getByLabel(/TW-1/).check();
    await button(page, name).click();
  };

  it('is left part tight, and the taps survive a reload', async () => {
    await button(technician, 'Go to the bolt plan').click();
    await technician.getByLabel(/TW-1/).waitFor();
    await picture(technician, '08-setup');
    await begin(technician, 'Begin pass 1');
    await button(technician, 'Bolt 1 done').click();
    await button(technician, 'Bolt 7 done').click();
    await technician.reload();
    await button(technician, 'Bolt 4 done').click();
    await picture(technician, '09-tightening');
    await button(technician, 'Stop here').click();
    await technician.getByLabel('End of shift').check();
    await picture(technician, '10-stop');
    await button(technician, 'Leave it part tight').click();
    await technician.getByText(/Part tight: pass 1 starts again/).waitFor();
    await expect.poll(stage).toBe('part-tight');
    const make = await makeState(plant.shutdown, joint);
    expect(make.partTight).toMatchObject({ pass: 1, lastBolt: 4, boltsDone: 3, why: 'End of shift' });
    await technician.goto(plant.at('/my-joints'));
    await technician.getByText(/Left by Theo Technician, Mara Mate in pass 1/).waitFor();
    await picture(technician, '11-part-tight');
  });

  it('is tightened with the network down, and nothing is lost or doubled', async () => {
    await button(technician, 'Go on with pass 1').click();
    await technician.getByText(/Part tight: pass 1 starts again/).waitFor();
    await picture(technician, '12-restart');
    await begin(technician, 'Begin pass 1');
    await technician.context().setOffline(true);
    await bolts(technician);
    await button(technician, 'Record the pass').click();
    await button(technician, 'Begin pass 2').click();
    await bolts(technician);
    await button(technician, 'Record the pass').click();
    await technician.getByText(/2 records wait to be sent/).waitFor();
    await picture(technician, '13-waiting');
    expect((await makeState(plant.shutdown, joint)).nextPass).toBe(1);
    await technician.context().setOffline(false);
    await expect.poll(async () => (await makeState(plant.shutdown, joint)).nextPass, { timeout: 20_000 }).toBe(3);
    expect((await makeState(plant.shutdown, joint)).passes.map((pass) => [pass.pass, pass.finished])).toEqual([
      [1, false],
      [1, true],
      [2, true],
    ]);
  });

  it('is tight after the last pass and a final round in which no nut moved', async () => {
    await button(technician, 'Begin pass 3').click();
    await bolts(technician);
    await button(technician, 'Record the pass').click();
    await button(technician, 'Begin the final round').click();
    await bolts(technician);
    await picture(technician, '14-final-round');
    await button(technician, 'A nut moved, go round again').click();
    await bolts(technician);
    await button(technician, 'No nut moved').click();
    await technician.getByRole('heading', { name: 'The joint is tight' }).waitFor();
    await picture(technician, '15-tight');
    expect(await stage()).toBe('tight');
  });

  it('is checked by a chargehand who recorded none of it', async () => {
    const chargehand = await plant.signIn(plant.shutdown.chargehand, phone);
    await chargehand.goto(plant.at(`/joints/${joint.jointId}/work?do=chargehand`));
    await chargehand.getByLabel(/^Accepted/).check();
    await picture(chargehand, '16-check');
    await button(chargehand, 'Sign the check').click();
    await picture(chargehand, '17-check-sign');
    await sign(chargehand, 'Sign the check');
    await expect.poll(stage).toBe('checked');
  });

  it('is proven from the readings of its test pack', async () => {
    const inspector = await plant.signIn(plant.shutdown.inspector, desk);
    await inspector.goto(plant.at(`/packs/${plant.shutdown.packId}/test`));
    for (const point of ['Boundary walked', 'Blinds are rated', 'Relief valves are out or gagged as planned'])
      await inspector.getByLabel(point).check();
    await inspector.getByLabel(/Metal temperature/).fill('18');
    await inspector.getByLabel(/PG-1/).check();
    await picture(inspector, '18-pack-release');
    await button(inspector, 'Release to pressure').click();
    await sign(inspector, 'Sign');
    await inspector.getByLabel(/Pressure read/).fill('30.2');
    await inspector.getByLabel(/^Held/).fill('35');
    await inspector.getByLabel(/joint is dry/).check();
    await picture(inspector, '19-reading');
    await button(inspector, 'Record the reading').click();
    await inspector.getByLabel(joint.tag).check();
    await button(inspector, 'Look and declare proven').click();
    await sign(inspector, 'Sign');
    await expect.poll(stage).toBe('proven');
  });

  it('is offered to operations and taken over with its system', async () => {
    const coordinator = await plant.signIn(plant.shutdown.coordinator, desk);
    await coordinator.goto(plant.at(`/systems/${plant.shutdown.systemId}/hand-over`));
    await button(coordinator, /Look and offer/).waitFor();
    await picture(coordinator, '20-hand-over');
    await button(coordinator, /Look and offer/).click();
    await sign(coordinator, 'Sign');
    const operations = await plant.signIn(plant.shutdown.operations, desk);
    await operations.goto(plant.at(`/systems/${plant.shutdown.systemId}/hand-over`));
    await operations.getByText(/^Offered by/).waitFor();
    await button(operations, /Look and take over/).click();
    await sign(operations, 'Sign');
    await expect.poll(stage).toBe('handed-over');
  });
});

describe('a joint on hold', () => {
  it('is not opened; work that is already done is kept for review and moves nothing', async () => {
    const { shutdown } = plant;
    const held = await listJoint(shutdown);
    await engineer(shutdown, held);
    await release(shutdown, held);
    const holdId = uuidv7();
    await onMake(shutdown, held).must(shutdown.inspector, 'hold-placed', {
      holdId,
      reason: 'Isolation in doubt.',
      releasedBy: 'inspector',
    });
    const page = await plant.signIn(shutdown.technician, phone);
    await page.goto(plant.at(`/joints/${held.jointId}/work`));
    await page.getByText('Isolation in doubt. To be released by: QC inspector.').waitFor();
    await page.goto(plant.at(`/joints/${held.jointId}/work?do=open`));
    await recordOpening(page);
    await page.getByRole('heading', { name: 'Rules stop this' }).waitFor();
    await picture(page, '21-refused');
    expect((await makeState(shutdown, held)).waiting).toEqual([]);
    await button(page, 'It is already done').click();
    await picture(page, '22-already-done');
    await button(page, 'Keep it for review').click();
    await page
      .getByText(/Kept for review/)
      .first()
      .waitFor();
    const make = await makeState(shutdown, held);
    expect(make.stage).toBe('released');
    expect(make.waiting.map((fact) => fact.type)).toEqual(['opened']);
    await page.context().close();
  });
});
