import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { build, preview } from 'vite';
import { launchChromium } from './chromium.ts';

export type GalleryPage = 'answers' | 'table' | 'plans' | 'controls' | 'asking' | 'tightening';

export interface Gallery {
  readonly browser: Browser;
  /** opens a page of the gallery in a context of its own; what the page throws fails the test */
  readonly open: (page: GalleryPage, context?: BrowserContextOptions, theme?: string) => Promise<Page>;
  readonly close: () => Promise<void>;
}

const webRoot = fileURLToPath(new URL('../../../apps/web/', import.meta.url));

export const desk: BrowserContextOptions = { viewport: { width: 1440, height: 900 } };
export const phone: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
};

/** Builds the gallery of the web app's parts, serves it and starts a browser for it. */
export async function startGallery(): Promise<Gallery> {
  const outDir = mkdtempSync(join(tmpdir(), 'seatwell-gallery-'));
  const served = { root: webRoot, logLevel: 'warn' } as const;
  // Built once: in the many pages of its tests the sources one by one would be most of the time.
  await build({
    ...served,
    build: { outDir, emptyOutDir: true, sourcemap: false, rollupOptions: { input: join(webRoot, 'gallery.html') } },
  });
  const server = await preview({ ...served, build: { outDir }, preview: { host: '127.0.0.1', port: 0 } });
  const address = server.resolvedUrls?.local[0];
  const browser = await launchChromium();

  const open: Gallery['open'] = async (name, context = desk, theme = 'light') => {
    const opened = await browser.newContext(context);
    const page = await opened.newPage();
    page.on('pageerror', (error) => {
      throw error;
    });
    await page.addInitScript((chosen) => localStorage.setItem('seatwell.theme', chosen), theme);
    await page.goto(`${address}gallery.html#${name}`);
    await page.waitForSelector('h1');
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    return page;
  };
  const close = async () => {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
  return { browser, open, close };
}
