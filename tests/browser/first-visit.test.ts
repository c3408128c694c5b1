import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchChromium } from './support/chromium.ts';
import { button, choose, day, inDialog } from './support/dialogs.ts';
import { openEmptySite } from './support/empty-site.ts';
import { desk, phone } from './support/gallery.ts';
import { picture } from './support/running-plant.ts';
import { settled, watchedPage } from './support/watched-page.ts';

const password = 'a long secret of Ada';
let site: Awaited<ReturnType<typeof openEmptySite>>;
let browser: Browser;
beforeAll(async () => {
  site = await openEmptySite();
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

describe('the first hour of a site', () => {
  let page: Page;
  let complaints: string[];
  let setUp: string;

  // The browser itself notes that nobody is signed in yet.
  const broken = () => complaints.filter((each) => !each.includes('401'));
  const open = async (size: typeof desk) => {
    const context = await browser.newContext({ ...size, baseURL: site.url });
    context.setDefaultTimeout(10_000);
    return watchedPage(context);
  };

  it('leads whoever comes first to setting it up, and makes site and administrator', async () => {
    ({ page, complaints } = await open(phone));
    await page.goto('/');
    await page.getByRole('heading', { name: 'Set up the site' }).waitFor();
    await button(page, 'Set up the site').click();
    expect(await page.getByText('This is needed.').count()).toBeGreaterThan(3);
    await page.getByLabel('Name of the site').fill('Northern terminal');
    await choose(page, 'Time zone', 'Oslo');
    await page.getByLabel('Your name, as it is printed').fill('Ada Ministrator');
    await page.getByLabel('Company').fill('Owner');
    await page.getByLabel('E-mail address').fill('ada@terminal.example');
    await page.getByLabel('Password').fill('short');
    await page.getByText('5 characters are too few').waitFor();
    await page.getByLabel('Password').fill(password);
    await picture(page, 'first-visit');
    await button(page, 'Set up the site').click();
    await page
      .getByRole('heading', { level: 1 })
      .filter({ hasText: /shutdown/i })
      .waitFor();
    await settled(page);
    await picture(page, 'first-shutdowns');
  });

  it('opens a shutdown with its dates and shifts', async () => {
    await button(page, 'Open a shutdown').first().click();
    await page.getByLabel('Name of the shutdown').fill('Autumn');
    await page.getByLabel('First day').fill(day(20));
    await page.getByLabel('Last day').fill(day(3));
    await page.getByText('The shutdown ends before it starts').waitFor();
    await page.getByLabel('Last day').fill(day(48));
    await picture(page, 'first-open-shutdown');
    await button(page, 'Open a shutdown').last().click();
    await page.getByRole('heading', { name: 'Setup of Autumn' }).waitFor();
    setUp = new URL(page.url()).pathname;
    await picture(page, 'first-setup');
    expect(broken()).toEqual([]);
    await page.context().close();
  });

  it('can be entered again at the desk, and turns a wrong password away', async () => {
    ({ page, complaints } = await open(desk));
    await page.goto(setUp);
    await page.getByLabel('E-mail').fill('ada@terminal.example');
    await page.getByLabel('Password').fill('not the secret of Ada');
    await button(page, 'Sign in').click();
    await page.getByRole('alert').waitFor();
    await page.getByLabel('Password').fill(password);
    await button(page, 'Sign in').click();
    await page.getByRole('heading', { name: 'Setup of Autumn' }).waitFor();
    expect(broken()).toEqual([]);
  });

  it('lists an area, a system in it, and a crew', async () => {
    await page.getByLabel('Code').fill('U10');
    await page.getByLabel('Name', { exact: true }).fill('Unit 10');
    await page.keyboard.press('Enter');
    await page.getByRole('link', { name: 'Unit 10' }).waitFor();
    await page.getByRole('tab', { name: /Systems/ }).click();
    await page.getByLabel('Code').fill('10-01');
    await page.getByLabel('Name', { exact: true }).fill('Feed');
    await page.getByLabel('Area', { exact: true }).selectOption({ label: 'Unit 10 · U10' });
    await button(page, 'Add the system').click();
    await page
      .getByRole('cell', { name: '10-01' })
      .or(page.getByRole('rowheader', { name: '10-01' }))
      .waitFor();
    await page.getByRole('tab', { name: /Crews/ }).click();
    await button(page, 'Add a crew').click();
    await inDialog(page, 'Save', async (dialog) => {
      await dialog.getByLabel('Code').fill('D1');
      await dialog.getByLabel('Company').fill('Contractor');
      await dialog.getByLabel('Shift').selectOption({ label: 'Day' });
      await choose(dialog, 'Add a person', 'Ada');
      await picture(page, 'first-crew');
    });
    await page.getByText('D1').waitFor();
    await picture(page, 'first-crews');
    expect(broken()).toEqual([]);
  });

  it('offers the import where the register is empty', async () => {
    await page.getByRole('link', { name: 'Register', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Register' }).waitFor();
    await settled(page);
    await picture(page, 'first-register');
    await page
      .getByRole('main')
      .getByText(/spreadsheet|import/i)
      .first()
      .waitFor();
    expect(broken()).toEqual([]);
  });
});
