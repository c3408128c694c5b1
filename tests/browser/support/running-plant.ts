import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { createServer } from 'vite';
import { PASSWORD, type SignedIn } from '../../api/support/plant.ts';
import { openShutdown, type Shutdown } from '../../api/support/shutdown.ts';
import { holdTalk } from '../../api/support/talk.ts';
import { atRest } from './barriers.ts';
import { launchChromium } from './chromium.ts';

/** A server with a shutdown in progress, the web app in front of it, and a browser. */
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

/** The plant's clock is the device's: what the browser records has to be of now. */
function letTheClockRun(shutdown: Shutdown): void {
  Object.defineProperty(shutdown.plant, 'now', { get: () => new Date(), set: () => undefined });
}

export async function openRunningPlant(): Promise<RunningPlant> {
  const shutdown = await openShutdown();
  letTheClockRun(shutdown);
  // The talk of the test shutdown lies in its year; the crew hears one now.
  await holdTalk(shutdown);
  const { port } = shutdown.plant.app.server.address() as AddressInfo;
  const cacheDir = mkdtempSync(join(tmpdir(), 'seatwell-web-'));
  const web = await createServer({
    root: fileURLToPath(new URL('../../../apps/web', import.meta.url)),
    cacheDir,
    logLevel: 'warn',
    server: {
      host: 'localhost',
      port: 0,
      hmr: false,
      proxy: { '/api': { target: `http://127.0.0.1:${port}`, changeOrigin: false } },
    },
  });
  await web.listen();
  const origin = (web.resolvedUrls?.local[0] ?? '').replace(/\/$/, '');
  const browser = await launchChromium();
  const at = (path: string) => `${origin}/shutdowns/${shutdown.shutdownId}${path}`;
  return {
    shutdown,
    browser,
    origin,
    at,
    signIn: async (who, options) => {
      const context = await browser.newContext(options);
      context.setDefaultTimeout(15_000);
      const page = await context.newPage();
      page.on('pageerror', (error) => {
        // React renders again by itself where a page's code arrives just while it is being rendered for the first
        // time ("Update hook called on initial render", reported by React as its own); nobody sees anything of it.
        if (error.message.includes('React was able to recover')) return;
        throw error;
      });
      await page.goto(`${origin}/sign-in`);
      await page.getByLabel('E-mail').fill(who.email);
      await page.getByLabel('Password').fill(PASSWORD);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.waitForURL(/shutdowns/);
      return page;
    },
    close: async () => {
      await browser.close();
      await web.close();
      rmSync(cacheDir, { recursive: true, force: true });
      await shutdown.close();
    },
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
