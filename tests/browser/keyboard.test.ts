import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { barriers } from './support/barriers.ts';
import { type Demo, openDemo } from './support/demo.ts';
import { desk } from './support/gallery.ts';
import { settled, watchedPage } from './support/watched-page.ts';

let demo: Demo;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  demo = await openDemo();
  const context = await demo.browser.newContext({ ...desk, baseURL: demo.url });
  context.setDefaultTimeout(20_000);
  ({ page, complaints } = await watchedPage(context));
});
afterAll(() => demo?.close());

/** Name and role of what has the focus, for messages and comparisons. */
const focused = () =>
  page.evaluate(() => {
    const { activeElement: element } = document;
    return `${element?.getAttribute('role') ?? element?.tagName.toLowerCase()} ${element?.getAttribute('aria-label') ?? element?.textContent ?? ''}`.trim();
  });

/** Presses Tab until what is wanted has the focus; everything on the way shows that it has it. */
async function tabTo(wanted: RegExp, most = 40, key = 'Tab'): Promise<void> {
  for (let step = 0; step < most; step += 1) {
    await page.keyboard.press(key);
    await expectFocusShown();
    if (wanted.test(await focused())) return;
  }
  throw new Error(
    `${wanted} was not reached with ${most} presses of ${key}; the focus stands on "${await focused()}".`,
  );
}

/** Whether a sighted person sees where the focus stands: an outline that is not transparent, inside the screen. */
const showsFocus = () =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (!element || element === document.body) return false;
    const drawn = [element, element.parentElement, element.parentElement?.parentElement, element.closest('label')].some(
      (each) => {
        if (!each) return false;
        const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(each);
        return (
          outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && !/, 0\)$|transparent/.test(outlineColor)
        );
      },
    );
    const { width, height, bottom, top } = element.getBoundingClientRect();
    return drawn && width > 0 && height > 0 && bottom > 0 && top < innerHeight;
  });

async function expectFocusShown(): Promise<void> {
  if (!(await showsFocus())) throw new Error(`Nobody sees that the focus stands on "${await focused()}".`);
}

const rowIndex = () =>
  page.evaluate(() => Number(document.activeElement?.closest('[role=row]')?.getAttribute('aria-rowindex')));

describe('a coordinator at the desk without a mouse', () => {
  it('signs in', async () => {
    const { email, password } = demo.accountOf('coordinator');
    await page.goto('/sign-in');
    await settled(page);
    await tabTo(/^input/);
    await page.keyboard.type(email);
    await tabTo(/^input/);
    await page.keyboard.type(password);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/today$/);
    await settled(page);
  });

  it('skips the navigation, and goes to the register by it', async () => {
    await page.reload();
    await settled(page);
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('a Skip to the page');
    await expectFocusShown();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('main') !== null)).toBe(true);
    await tabTo(/^a Register/, 80, 'Shift+Tab');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Register' }).waitFor();
    await settled(page);
    // The page's title is read out first.
    await expect.poll(focused).toBe('h1 Register');
  });

  it('narrows the list by the sentence', async () => {
    const all = Number(await page.getByRole('grid').getAttribute('aria-rowcount'));
    await tabTo(/^button Stage:/);
    await page.keyboard.press('Enter');
    await page.getByRole('checkbox', { name: 'tight', exact: true }).focus();
    await page.keyboard.press(' ');
    await page.keyboard.press('Escape');
    await expect.poll(focused).toMatch(/^button Stage: tight$/);
    await expect.poll(async () => Number(await page.getByRole('grid').getAttribute('aria-rowcount'))).toBeLessThan(all);
    expect(page.url()).toContain('stage=tight');
  });

  it('is told the keys of the page, and finds a joint by two of them', async () => {
    await page.keyboard.press('?');
    const sheet = page.getByRole('dialog', { name: 'Keys' });
    await sheet.getByRole('heading', { name: 'In the table' }).waitFor();
    await sheet.getByText('Tick from the row ticked last to this one').waitFor();
    // The register has no slider and no views.
    expect(await sheet.getByRole('heading', { level: 3 }).allTextContents()).toEqual([
      'On every page',
      'In the table',
      'In the sentence above the list',
    ]);
    expect(await barriers(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });
    await page.keyboard.press('/');
    await expect.poll(focused).toMatch(/^input/);
    // In a field they are what is typed.
    await page.keyboard.type('?/');
    expect(await page.getByRole('searchbox').inputValue()).toBe('?/');
    expect(await sheet.count()).toBe(0);
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Delete');
    await settled(page);
  });

  it('switches the single keys off, and still reaches the sheet by its button', async () => {
    const sheet = page.getByRole('dialog', { name: 'Keys' });
    await tabTo(/^button Keys/, 80, 'Shift+Tab');
    await page.keyboard.press('Enter');
    const single = sheet.getByRole('checkbox', { name: '? and / work as single keys' });
    await single.press(' ');
    await page.keyboard.press('Escape');
    await expect.poll(focused).toMatch(/^button Keys/);
    await page.keyboard.press('?');
    expect(await sheet.count()).toBe(0);
    await page.keyboard.press('Enter');
    await single.press(' ');
    await page.keyboard.press('Escape');
    await page.keyboard.press('?');
    await sheet.waitFor();
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });
  });

  it('walks the rows, opens a joint, and comes back to the same row', async () => {
    await tabTo(/^row/);
    expect(await rowIndex()).toBe(2);
    await page.keyboard.press('ArrowDown');
    await expect.poll(rowIndex).toBe(3);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    await expect.poll(rowIndex).toBe(3);
    await expectFocusShown();
    const tag = await page.locator('[aria-rowindex="3"] [role=rowheader]').textContent();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: tag ?? '' }).waitFor();
    // The browser's own key for it belongs to a window that a headless browser does not have.
    await page.goBack();
    await page.getByRole('heading', { level: 1, name: 'Register' }).waitFor();
    expect(page.url()).toContain('stage=tight');
    await expect.poll(rowIndex).toBe(3);
  });

  it('ticks rows one by one and as a range, and reaches what can be done with them', async () => {
    await page.keyboard.press(' ');
    await page.getByText('1 selected').waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await expect.poll(rowIndex).toBe(5);
    await page.keyboard.press('Shift+ ');
    await page.getByText('3 selected').waitFor();
    await tabTo(/^button Assign crew/);
  });

  it('decides in a dialog that keeps the focus and gives it back', async () => {
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    for (let step = 0; step < 12; step += 1) {
      await page.keyboard.press(step < 8 ? 'Tab' : 'Shift+Tab');
      expect(await page.evaluate(() => document.activeElement?.closest('[role=dialog]') !== null)).toBe(true);
      await expectFocusShown();
    }
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await expect.poll(focused).toMatch(/^button Assign crew/);
    expect(complaints).toEqual([]);
  });
});
