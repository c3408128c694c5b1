import type { BrowserContext, Page } from 'playwright-core';

export interface WatchedPage {
  readonly page: Page;
  /** what the page threw or wrote as an error, and answers of the server that say it broke */
  readonly complaints: string[];
}

/** A page whose complaints are kept. */
export async function watchedPage(context: BrowserContext, theme = 'light'): Promise<WatchedPage> {
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(`thrown: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`console: ${message.text()} (${message.location().url})`);
  });
  page.on('response', (response) => {
    if (response.status() >= 500) complaints.push(`${response.status()} ${response.url()}`);
  });
  await page.addInitScript((chosen) => localStorage.setItem('seatwell.theme', chosen), theme);
  return { page, complaints };
}

/** Waits until a page shows what it is for: its title, and nothing that is still on its way. */
export async function settled(page: Page): Promise<void> {
  await page.locator('h1').first().waitFor();
  await page.waitForFunction(() => {
    const waiting = document.querySelectorAll('[role=status] [aria-hidden=true], [aria-busy=true]');
    return waiting.length === 0;
  });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

/** Changes theme and gloves of an open page, as choosing them in another window of the same browser does. */
export async function changeTheme(page: Page, theme: string, gloves = false): Promise<void> {
  await page.evaluate(
    (choices) => {
      for (const [key, newValue] of choices) {
        localStorage.setItem(key, newValue);
        dispatchEvent(new StorageEvent('storage', { key, newValue }));
      }
    },
    [
      ['seatwell.theme', theme],
      ['seatwell.glove', gloves ? 'on' : 'off'],
    ] as const,
  );
  await page.waitForFunction(
    ([chosen, on]) => {
      const { theme: now, glove } = document.documentElement.dataset;
      return now === chosen && (glove !== undefined) === on;
    },
    [theme, gloves] as const,
  );
}

/** A watched page of an address, once it shows what it is for. */
export async function openPage(context: BrowserContext, address: string): Promise<WatchedPage> {
  const watched = await watchedPage(context);
  await watched.page.goto(address);
  await settled(watched.page);
  return watched;
}
