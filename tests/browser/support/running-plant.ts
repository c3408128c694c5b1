import { mkdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { PASSWORD, type SignedIn } from '../../api/support/plant.ts';
import type { Shutdown } from '../../api/support/shutdown.ts';
import { holdTalk } from '../../api/support/talk.ts';
import { atRest } from './barriers.ts';
import { openBuiltPlant } from './built-plant.ts';

/** A server with a shutdown in progress that serves the built web app, and a browser. */
export interface RunningPlant {
  readonly shutdown: Shutdown;
  readonly browser: Browser;
  readonly origin: string;
  /** a browser of its own in which the person has signed in through the sign-in page */
  readonly signIn: (who: SignedIn, context: BrowserContextOptions) => Promise<Page>;
  /** address below the shutdown */
  readonly at: (path: string) => string;
  readonly close: () => Promise<void>;
}

export async function openRunningPlant(): Promise<RunningPlant> {
  const { shutdown, browser, at, close } = await openBuiltPlant();
  // The talk of the test shutdown lies in its year; the crew hears one now.
  await holdTalk(shutdown);
  const origin = `http://127.0.0.1:${(shutdown.plant.app.server.address() as AddressInfo).port}`;
  return {
    shutdown,
    browser,
    origin,
    at: (path) => `${origin}${at(path)}`,
    signIn: async (who, options) => {
      const context = await browser.newContext(options);
      context.setDefaultTimeout(15_000);
      const page = await context.newPage();
      page.on('pageerror', (error) => {
        throw error;
      });
      await page.goto(`${origin}/sign-in`);
      await page.getByLabel('E-mail').fill(who.email);
      await page.getByLabel('Password').fill(PASSWORD);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.waitForURL(/shutdowns/);
      return page;
    },
    close,
  };
}

/** Keeps a picture of the page where SCREENSHOTS names a folder. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['SCREENSHOTS'];
  if (folder === undefined || folder === '') return;
  await atRest(page);
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
}
