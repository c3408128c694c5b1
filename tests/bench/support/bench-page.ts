import type { Browser, BrowserContext, Page } from 'playwright-core';
import { launchChromium } from '../../browser/support/chromium.ts';
import type { BenchShutdown } from './bench-shutdown.ts';

/** A browser at the desk in which the bench's coordinator is signed in. */
export async function openBenchBrowser(plant: BenchShutdown): Promise<{
  readonly browser: Browser;
  readonly context: BrowserContext;
  readonly open: (path: string) => Promise<Page>;
}> {
  const browser = await launchChromium();
  const context = await browser.newContext({ baseURL: plant.url, viewport: { width: 1440, height: 900 } });
  context.setDefaultTimeout(60_000);
  const [name, value] = plant.cookie.split('=');
  await context.addCookies([{ name: name ?? '', value: value ?? '', url: plant.url }]);
  return {
    browser,
    context,
    open: async (path) => {
      const page = await context.newPage();
      await page.goto(`/shutdowns/${plant.shutdown.shutdownId}${path}`);
      await page.locator('h1').waitFor();
      return page;
    },
  };
}
