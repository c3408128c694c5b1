import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTestDatabase } from '../api/support/database.ts';
import { fillRegister } from '../api/support/many-joints.ts';
import { listJoint } from '../api/support/shutdown.ts';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { desk, phone } from './support/gallery.ts';
import { settled, watchedPage } from './support/watched-page.ts';

const JOINTS = 100_000;
/** The tag that a register ordered by tag ends with: the last of the highest unit, see fillRegister. */
const lastTag = 'U39-0099999';

let plant: BuiltPlant;

beforeAll(async () => {
  const database = await createTestDatabase();
  plant = await openBuiltPlant(database);
  const { jointId } = await listJoint(plant.shutdown, { tag: 'U0-0000000' });
  await fillRegister(database.url, jointId, JOINTS);
});
afterAll(() => plant?.close());

/** Watches from inside the page how many rows there ever were at once. */
const watchRows = (page: Page, selector: string) =>
  page.evaluate((wanted) => {
    const seen = globalThis as unknown as { mostRows: number };
    seen.mostRows = 0;
    const count = () => {
      seen.mostRows = Math.max(seen.mostRows, document.querySelectorAll(wanted).length);
    };
    new MutationObserver(count).observe(document.body, { childList: true, subtree: true });
    count();
  }, selector);

const mostRows = (page: Page) => page.evaluate(() => (globalThis as unknown as { mostRows: number }).mostRows);

describe('a register of 100,000 joints', () => {
  it('is at its last joint with one press of End, and never has 150 rows in the page', async () => {
    const { page, complaints } = await watchedPage(await plant.contextOf('coordinator', desk));
    await page.goto(plant.at('/register'));
    await settled(page);
    await page.getByText('100,000 joints').waitFor();
    await watchRows(page, '[role=row]');
    await page.locator('[role=row][tabindex="0"]').focus();
    const pages: string[] = [];
    page.on('request', (request) => {
      if (request.url().includes('/joints?')) pages.push(request.url());
    });
    const last = page.getByRole('rowheader', { name: lastTag, exact: true });
    await page.keyboard.press('End');
    await last.waitFor();
    // Nothing of what lies between was asked for.
    expect(pages.length).toBeLessThanOrEqual(3);
    await page.waitForFunction(
      (rows) => document.activeElement?.getAttribute('aria-rowindex') === String(rows),
      JOINTS + 1,
    );
    expect(await page.getByRole('grid').getAttribute('aria-rowcount')).toBe(String(JOINTS + 1));
    const most = await mostRows(page);
    expect(most).toBeGreaterThan(10);
    expect(most).toBeLessThan(150);

    // The wheel takes the bar from the top to the end as well.
    await page.keyboard.press('Home');
    await page.getByRole('rowheader', { name: 'U0-0000000', exact: true }).waitFor();
    await page.getByRole('grid').hover();
    for (let turn = 0; turn < 60 && (await last.count()) === 0; turn += 1) await page.mouse.wheel(0, 200_000);
    await last.waitFor();
    expect(await mostRows(page)).toBeLessThan(150);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('has as few cards on a phone, and goes on loading while they are scrolled', async () => {
    const { page, complaints } = await watchedPage(await plant.contextOf('coordinator', phone));
    await page.goto(plant.at('/register'));
    await settled(page);
    const cards = page.locator('li[aria-setsize]');
    await cards.first().waitFor();
    await watchRows(page, 'li[aria-setsize]');
    const furthest = () =>
      cards.evaluateAll((all) => Math.max(...all.map((card) => Number(card.getAttribute('aria-posinset')))));
    for (let swipe = 0; swipe < 200 && (await furthest()) < 1_000; swipe += 1)
      await page.evaluate(() => scrollBy(0, innerHeight * 4));
    expect(await furthest()).toBeGreaterThanOrEqual(1_000);
    expect(await mostRows(page)).toBeLessThan(150);
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
