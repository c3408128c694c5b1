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
