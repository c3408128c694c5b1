import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { atRest } from './support/barriers.ts';
import { desk, type Gallery, type GalleryPage, phone, startGallery } from './support/gallery.ts';

let gallery: Gallery;

beforeAll(async () => {
  gallery = await startGallery();
});
afterAll(() => gallery?.close());

const pages: GalleryPage[] = ['answers', 'table', 'plans', 'controls', 'asking', 'tightening'];
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds against WCAG 2.2 A and AA, in words. */
async function violations(page: Page): Promise<string[]> {
  await atRest(page);
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
    const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
    const found = await axe.run(document, { runOnly: { type: 'tag', values: tags } });
    return found.violations.flatMap((violation) =>
      violation.nodes.map((node) => `${violation.id}: ${node.html.slice(0, 160)}`),
    );
  });
}

test('the check for barriers finds one', async () => {
  const page = await gallery.open('plans');
  await page.evaluate(() => document.querySelector('main')?.append(document.createElement('img')));
  expect(await violations(page)).toEqual([expect.stringContaining('image-alt')]);
  await page.context().close();
});

describe.each(['light', 'dark', 'bright'])('in the %s theme', (theme) => {
  test.each(pages)('%s has nothing that shuts people out, at the desk', async (name) => {
    const page = await gallery.open(name, desk, theme);
    expect(await violations(page)).toEqual([]);
    await page.context().close();
  });

  test.each(pages)('%s has nothing that shuts people out, on a phone', async (name) => {
    const page = await gallery.open(name, phone, theme);
    expect(await violations(page)).toEqual([]);
    await page.context().close();
  });
});

test.each(pages)('%s fits into 320 px without scrolling sideways', async (name) => {
  const page = await gallery.open(name, { ...phone, viewport: { width: 320, height: 640 } });
  const beyond = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(beyond).toBe(0);
  await page.context().close();
});

test.each(pages)('%s runs from right to left where the language does', async (name) => {
  const page = await gallery.open(name, phone);
  await page.evaluate(() => {
    document.documentElement.dir = 'rtl';
  });
  const beyond = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(beyond).toBe(0);
  await page.context().close();
});

describe('a table of 100,000 rows', () => {
  test('keeps fewer than 150 rows in the page and says how many there are', async () => {
    const page = await gallery.open('table');
    expect(await page.locator('[role=row]').count()).toBeLessThan(150);
    expect(await page.getByRole('grid').getAttribute('aria-rowcount')).toBe('100001');
    await page.context().close();
  });

  test('is walked with the keys: down, up, end, home, enter', async () => {
    const page = await gallery.open('table');
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-rowindex'));
    await page.locator('[role=row][tabindex="0"]').focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await expect.poll(focused).toBe('4');
    await page.keyboard.press('ArrowUp');
    await expect.poll(focused).toBe('3');
    await page.keyboard.press('End');
    await expect.poll(focused).toBe('100001');
    expect(await page.locator('[role=row]').count()).toBeLessThan(150);
    await page.keyboard.press('Home');
    await expect.poll(focused).toBe('2');
    await page.keyboard.press('Enter');
    await page.getByText('opened U30-E1-00000').waitFor();
    await page.context().close();
  });

  test('is ticked row by row, and from one row to another with shift', async () => {
    const page = await gallery.open('table');
    const selected = (count: string) => page.getByText(`${count} selected`).waitFor();
    const box = (tag: string) => page.getByRole('checkbox', { name: `Select ${tag}` });
    await selected('2');
    await box('U38-E9-00008').click();
    await selected('3');
    await box('U41-E3-00011').click({ modifiers: ['Shift'] });
    await selected('6');
    await page.locator('[aria-rowindex="2"]').focus();
    await page.keyboard.press(' ');
    await selected('7');
    await page.getByRole('checkbox', { name: 'Select all rows' }).click();
    await selected('100,000');
    await page.context().close();
  });

  test('becomes cards on a phone, as few', async () => {
    const page = await gallery.open('table', phone);
    expect(await page.getByRole('grid').count()).toBe(0);
    const cards = page.locator('li[aria-setsize="100000"]');
    expect(await cards.count()).toBeGreaterThan(4);
    expect(await cards.count()).toBeLessThan(150);
    await page.context().close();
  });
});

describe('controls', () => {
  test('a number with a decimal comma is taken, one with two readings is asked back', async () => {
    const page = await gallery.open('controls');
    const field = page.getByRole('textbox', { name: 'Set value, N·m' });
    await field.fill('475,5');
    expect(await field.getAttribute('aria-invalid')).toBeNull();
    await field.fill('1,150');
    await page.getByText('can be read in two ways. Write 1150 or 1.15.').waitFor();
    await field.fill('700');
    await page.getByText('700 is above the limit of 680.').waitFor();
    expect(await field.inputValue()).toBe('700');
    await page.context().close();
  });

  test('a button that cannot be used stays reachable and says why', async () => {
    const page = await gallery.open('controls');
    const button = page.getByRole('button', { name: 'Start pass 1' });
    await button.focus();
    expect(await button.evaluate((element) => element === document.activeElement)).toBe(true);
    expect(await button.getAttribute('aria-disabled')).toBe('true');
    const reason = await button.getAttribute('aria-describedby');
    expect(await page.locator(`[id="${reason}"]`).textContent()).toContain('calibration ended on 2 March');
    await page.context().close();
  });

  test('a long list is found by typing and chosen with the keys', async () => {
    const page = await gallery.open('controls');
    const field = page.getByRole('combobox', { name: 'Procedure' });
    await field.click();
    await field.fill('bp-40 tension');
    const options = page.getByRole('listbox').getByRole('option');
    await options.first().waitFor();
    // BP-40 and BP-400
    expect(await options.count()).toBe(2);
    await field.press('Enter');
    expect(await field.inputValue()).toBe('BP-40 rev 4');
    await page.context().close();
  });

  test('in glove mode every button is at least 64 px high', async () => {
    const page = await gallery.open('controls', phone);
    await page.getByRole('checkbox', { name: 'Glove mode' }).check();
    const heights = await page
      .locator('main button')
      .evaluateAll((buttons) => buttons.map((button) => button.getBoundingClientRect().height));
    expect(heights.length).toBeGreaterThan(3);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(64);
    await page.context().close();
  });
});

describe('asking', () => {
  test('signing shows what is signed, wants the secret, and lets items be unticked', async () => {
    const page = await gallery.open('asking');
    await page.getByRole('button', { name: 'Sign the check' }).click();
    const dialog = page.getByRole('dialog');
    expect(await violations(page)).toEqual([]);
    const sign = dialog.getByRole('button', { name: 'Sign', exact: true });
    expect(await sign.getAttribute('aria-disabled')).toBe('true');
    await dialog.getByRole('checkbox', { name: 'U41-P1-02' }).uncheck();
    await dialog.getByText('3 of 4 will be signed').waitFor();
    await dialog.getByLabel('Your password').fill('a secret');
    expect(await sign.getAttribute('aria-disabled')).toBeNull();
    await sign.click();
    await dialog.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Sign the check' }).click();
    expect(await dialog.getByLabel('Your password').inputValue()).toBe('');
    await page.context().close();
  });

  test.each(['Open a dialog', 'Open a sheet', 'Sign the check'])(
    '%s: keeps the focus, closes with Escape, gives it back',
    async (name) => {
      const page = await gallery.open('asking');
      const opener = page.getByRole('button', { name });
      await opener.focus();
      await page.keyboard.press('Enter');
      await page.getByRole('dialog').waitFor();
      const focusInside = () => page.evaluate(() => document.activeElement?.closest('[role=dialog]') !== null);
      await expect.poll(focusInside).toBe(true);
      expect(await violations(page)).toEqual([]);
      for (let step = 0; step < 6; step += 1) {
        await page.keyboard.press('Tab');
        expect(await focusInside()).toBe(true);
      }
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await expect.poll(() => opener.evaluate((element) => element === document.activeElement)).toBe(true);
      await page.context().close();
    },
  );

  test('bars are shown as a table with the same figures', async () => {
    const page = await gallery.open('answers');
    await page.getByRole('button', { name: 'Show as table' }).click();
    const row = page.getByRole('row', { name: /Crude 30 44 12 8 62 100/ });
    expect(await row.count()).toBe(1);
    await page.context().close();
  });

  test('a filter of the sentence is changed by keyboard', async () => {
    const page = await gallery.open('table');
    await page.getByRole('button', { name: 'Area: Hydrotreater 41' }).press('Enter');
    await page.getByRole('searchbox').fill('flare');
    await page.getByRole('checkbox', { name: 'Flare 60' }).press(' ');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Area: Hydrotreater 41 or Flare 60' }).waitFor();
    await page.context().close();
  });
});
