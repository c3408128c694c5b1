import type { AddressInfo } from 'node:net';
import type { BrowserContext, Page } from 'playwright-core';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PASSWORD } from '../api/support/plant.ts';
import { type ListedJoint, listJoint } from '../api/support/shutdown.ts';
import { holdTalk } from '../api/support/talk.ts';
import { engineer, faces, makeState, nippedUp, onMake, openingBy, release, tighten } from '../api/support/work.ts';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { button, inDialog } from './support/dialogs.ts';
import { phone } from './support/gallery.ts';
import { picture } from './support/running-plant.ts';
import { settled } from './support/watched-page.ts';

let plant: BuiltPlant;
let context: BrowserContext;
let page: Page;
let joint: ListedJoint;
let port: number;

const stage = async (of = joint) => (await makeState(plant.shutdown, of)).stage;
const recorded = async (type: string, of = joint): Promise<number> => {
  const { rows } = await plant.shutdown.plant.db.query(
    'SELECT count(*)::int AS n FROM event WHERE type = $1 AND subject_id = $2',
    [type, of.jointId],
  );
  return rows[0].n;
};

/**
 * Without signal: the page is cut off, and the server does not listen, since the browser's switch leaves out what a
 * service worker asks for.
 */
async function signal(on: boolean): Promise<void> {
  const { server } = plant.shutdown.plant.app;
  if (on) {
    await new Promise<void>((resolve) => {
      server.listen(port, '127.0.0.1', resolve);
    });
  } else {
    await new Promise<void>((resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    });
  }
  await context.setOffline(!on);
}

/** A phone with the app on it: the service worker has taken its place and has read ahead. */
async function phoneOf(role: string): Promise<void> {
  context = await plant.contextOf(role, phone);
  page = await context.newPage();
  page.setDefaultTimeout(10_000);
  await page.goto(plant.at('/my-joints'));
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.reload();
  await settled(page);
}

/** Waits until the device has what it needs of a joint: the sheet is the last of it. */
async function readAhead(of: ListedJoint): Promise<void> {
  const path = `/api/v1/shutdowns/${plant.shutdown.shutdownId}/joints/${of.jointId}/sheet.pdf`;
  const here = () =>
    page.evaluate(async (sheet) => (await (await caches.open('seatwell-reads')).match(sheet)) !== undefined, path);
  await expect.poll(here, { timeout: 30_000 }).toBe(true);
}

beforeAll(async () => {
  plant = await openBuiltPlant();
  const { shutdown } = plant;
  port = (shutdown.plant.app.server.address() as AddressInfo).port;
  await holdTalk(shutdown);
  joint = await listJoint(shutdown);
  await engineer(shutdown, joint);
  await release(shutdown, joint);
  const { must } = onMake(shutdown, joint);
  await must(shutdown.technician, 'opened', openingBy(shutdown));
  await must(shutdown.technician, 'faces-inspected', {
    faces: faces(2, { flatness_mm: 0.05 }),
    bolting: { condition: 'new', accepted: true },
    accepted: true,
    remark: null,
  });
  await phoneOf('technician');
});
afterAll(() => plant?.close());

async function nipUp(): Promise<void> {
  await page.getByLabel('Kind of gasket').selectOption({ label: 'spiral wound' });
  await page.getByLabel('Class on the marking').selectOption({ label: '300' });
  await page.getByLabel('Size on the marking').fill('NPS 8');
  await page.getByRole('option', { name: 'NPS 8', exact: true }).click();
  await page.getByLabel('Purpose on tag or kit').selectOption({ label: 'final' });
  await page.getByLabel('Gaskets that are in').fill('1');
  await page.getByLabel('Batch or kit number').fill('27-0417');
  await page.getByLabel('Grade stamped on the studs').fill('B7');
  await page.getByRole('option', { name: 'B7', exact: true }).click();
  await page.getByLabel('Bolts fitted').fill('12');
  await page.getByLabel('new', { exact: true }).check();
  await page.getByLabel(/test paste/).check();
  await page.getByLabel(/Out of parallel/).fill('0.3');
  await page.getByLabel(/Offset of/).fill('0.5');
  await page.getByLabel(/Rotation of/).fill('1');
  await page.getByLabel(/Force to pull/).fill('3');
  for (const point of [/^At bolt 1/, /^A quarter on/, /^Opposite bolt 1/, /^Three quarters/])
    await page.getByLabel(point).fill('3.0');
}

describe('a technician in a place without signal', () => {
  it('finds the joints and each sheet on the phone', async () => {
    await readAhead(joint);
    await signal(false);
    await page.reload();
    await page.getByRole('link', { name: joint.tag }).first().waitFor();
    await page.getByText(/No answer from the server/).waitFor();
    await picture(page, 'offline-my-joints');
    const sheet = await page.evaluate(async (path) => {
      const answer = await fetch(path);
      return `${answer.status} ${(await answer.text()).slice(0, 5)}`;
    }, `/api/v1/shutdowns/${plant.shutdown.shutdownId}/joints/${joint.jointId}/sheet.pdf`);
    expect(sheet).toBe('200 %PDF-');
  });

  it('nips up, with a photo; both wait on the phone, through a reload', async () => {
    await page.goto(plant.at(`/joints/${joint.jointId}/work`));
    await page.getByRole('heading', { name: 'Fit the gasket and nip up' }).waitFor();
    await nipUp();
    await page
      .locator('input[type=file]')
      .first()
      .setInputFiles({
        name: 'marking.png',
        mimeType: 'image/png',
        buffer: await page.screenshot(),
      });
    await page.getByText('The photo is kept on this device').waitFor();
    await button(page, 'Record as nipped up').click();
    await page.getByText('1 record waits to be sent').first().waitFor();
    // The phone goes on from there: what comes next is known without the record.
    await page.getByRole('heading', { name: 'Tighten', exact: true }).waitFor();
    await page.reload();
    await page.getByText('1 record waits to be sent').first().waitFor();
    await button(page, 'Show what waits').click();
    await page
      .getByRole('dialog')
      .getByText(/nipping up/)
      .waitFor();
    await picture(page, 'offline-list');
    await page.keyboard.press('Escape');
    expect(await stage()).toBe('faces-accepted');
  });

  it('tightens the first pass on top of it', async () => {
    await button(page, 'Go to the bolt plan').click();
    await page.getByLabel('Mara Mate').check();
    await page.getByLabel(/TW-1/).check();
    await button(page, 'Begin pass 1').click();
    const done = button(page, /^Bolt \d+ done$/);
    while (await done.isVisible()) await done.click();
    await button(page, 'Record the pass').click();
    await button(page, 'Begin pass 2').waitFor();
    await picture(page, 'offline-pass');
  });

  it('back in reach, everything is recorded exactly once and in order, and nothing waits', async () => {
    await signal(true);
    await expect.poll(() => stage(), { timeout: 30_000 }).toBe('part-tight');
    const make = await makeState(plant.shutdown, joint);
    expect(make.passes.map((pass) => [pass.pass, pass.finished])).toEqual([[1, true]]);
    expect(make.waiting).toEqual([]);
    expect([await recorded('nipped-up'), await recorded('pass-recorded')]).toEqual([1, 1]);
    // The photo is the server's own by now.
    const photo = await page.request.get(`/api/v1/files/${make.fitted?.photo}`);
    expect(photo.status()).toBe(200);
    await expect.poll(() => page.getByText(/waits? to be sent/).count()).toBe(0);
    await page.reload();
    await settled(page);
    expect(await page.getByText(/waits? to be sent/).count()).toBe(0);
    expect([await recorded('nipped-up'), await recorded('pass-recorded')]).toEqual([1, 1]);
  });
});

describe('what the server does not take', () => {
  it('stays in the list with the failed rules, and goes as already done when the person says so', async () => {
    const { shutdown } = plant;
    const held = await listJoint(shutdown);
    await engineer(shutdown, held);
    await release(shutdown, held);
    await page.goto(plant.at(`/joints/${held.jointId}/work?do=open`));
    await page.getByLabel('Read, and told').check();
    const who = page.getByLabel('Who', { exact: true });
    await who.nth(0).selectOption({ label: 'Theo Technician' });
    await who.nth(1).selectOption({ label: 'Mara Mate' });
    for (const index of [0, 1]) await page.getByLabel('How', { exact: true }).nth(index).fill('vent open');
    await context.setOffline(true);
    await button(page, 'Record as open').click();
    await page.getByText('1 record waits to be sent').first().waitFor();
    const holdId = uuidv7();
    await onMake(shutdown, held).must(shutdown.inspector, 'hold-placed', {
      holdId,
      reason: 'Isolation in doubt.',
      releasedBy: 'inspector',
    });
    await context.setOffline(false);
    await page.getByText('1 record was refused').first().waitFor({ timeout: 30_000 });
    await button(page, 'Show what waits').click();
    await picture(page, 'offline-refused');
    const dialog = page.getByRole('dialog');
    await dialog.getByText(/hold/i).first().waitFor();
    expect(await recorded('opened', held)).toBe(0);
    await button(dialog, 'It is already done').click();
    await expect.poll(() => recorded('opened', held)).toBe(1);
    const make = await makeState(shutdown, held);
    expect(make.stage).toBe('released');
    expect(make.waiting.map((fact) => fact.type)).toEqual(['opened']);
    await expect.poll(() => page.getByText(/was refused/).count()).toBe(0);
  });

  it('a check made without signal waits for its signature: the secret is never kept', async () => {
    const { shutdown } = plant;
    const checked = await listJoint(shutdown);
    await engineer(shutdown, checked);
    await release(shutdown, checked);
    await onMake(shutdown, checked).must(shutdown.technician, 'opened', openingBy(shutdown));
    await onMake(shutdown, checked).must(shutdown.technician, 'faces-inspected', {
      faces: faces(2, { flatness_mm: 0.05 }),
      bolting: { condition: 'new', accepted: true },
      accepted: true,
      remark: null,
    });
    await onMake(shutdown, checked).must(shutdown.technician, 'nipped-up', nippedUp(shutdown));
    await tighten(shutdown, checked);
    await context.close();
    await phoneOf('chargehand');
    await page.goto(plant.at(`/joints/${checked.jointId}/work?do=chargehand`));
    await settled(page);
    await context.setOffline(true);
    await page.getByLabel(/^Accepted/).check();
    await button(page, 'Sign the check').click();
    await inDialog(page, 'Sign the check', (dialog) => dialog.getByLabel(/password/i).fill(PASSWORD));
    await page.getByText('1 record waits for your signature').first().waitFor();
    const kept = await page.evaluate(async () => {
      const open = indexedDB.open('seatwell', 1);
      await new Promise((resolve) => {
        open.onsuccess = resolve;
      });
      const all = open.result.transaction('facts').objectStore('facts').getAll();
      await new Promise((resolve) => {
        all.onsuccess = resolve;
      });
      return JSON.stringify(all.result);
    });
    expect(kept).toContain('checked');
    expect(kept).not.toContain(PASSWORD);
    await context.setOffline(false);
    await button(page, 'Show what waits').click();
    await picture(page, 'offline-to-sign');
    await button(page.getByRole('dialog'), 'Sign and send').click();
    await inDialog(page, 'Sign and send', (dialog) => dialog.getByLabel(/password/i).fill(PASSWORD));
    await expect.poll(() => stage(checked)).toBe('checked');
  });
});

describe('a shared phone', () => {
  it('shows nothing of one person to the next, and keeps what each has still to send apart', async () => {
    await page.goto(plant.at('/my-joints'));
    await settled(page);
    const kept = () => page.evaluate(async () => (await (await caches.open('seatwell-reads')).keys()).length);
    await expect.poll(kept).toBeGreaterThan(1);
    await button(page, 'More').click();
    await button(page.getByRole('dialog'), /Settings, sign out/).click();
    await button(page, 'Sign out').click();
    await page.getByLabel('E-mail').waitFor();
    expect(await kept()).toBe(0);
  });
});
