import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { routeTree } from '../../apps/web/src/routes/index.ts';
import { barriers, faintTexts, sideways, smallTargets } from './support/barriers.ts';
import { type Demo, openDemo } from './support/demo.ts';
import { openEmptySite } from './support/empty-site.ts';
import { desk, phone } from './support/gallery.ts';
import { demoPlaces, type Screen, screens } from './support/screens.ts';
import { changeTheme, settled, watchedPage } from './support/watched-page.ts';

let demo: Demo;
let emptySite: Awaited<ReturnType<typeof openEmptySite>>;
let addressOf: (screen: Screen) => string;

beforeAll(async () => {
  demo = await openDemo();
  emptySite = await openEmptySite();
  const coordinator = await demo.contextOf('coordinator');
  addressOf = await demoPlaces(coordinator);
  await coordinator.close();
});
afterAll(async () => {
  await demo?.close();
  await emptySite?.close();
});

interface Node {
  readonly options: { readonly path?: string };
  readonly children?: readonly Node[];
}

/** The addresses of the route tree: a route without a path only holds others. */
function routesOf(node: Node, above = ''): string[] {
  const { path } = node.options;
  const here = path === undefined || path === '/' ? above : `${above}${path}`;
  const below = (node.children ?? []).flatMap((child) => routesOf(child, here));
  const isPage = node.children === undefined;
  return isPage ? [here || '/', ...below] : below;
}

test('every route of the web app is looked at', () => {
  const routes = routesOf(routeTree as unknown as Node);
  expect(routes.length).toBeGreaterThan(35);
  expect(screens.map((screen) => screen.route).sort()).toEqual(routes.sort());
});

test('the checks find what is wrong with a page', async () => {
  const context = await demo.browser.newContext({ ...phone, baseURL: demo.url });
  const { page, complaints } = await watchedPage(context);
  await page.goto('/sign-in');
  await settled(page);
  await page.evaluate(() => {
    const image = document.createElement('img');
    image.style.inlineSize = '2000px';
    image.style.maxInlineSize = 'none';
    image.style.blockSize = '10px';
    const tiny = document.createElement('button');
    tiny.textContent = 'tiny';
    tiny.style.inlineSize = tiny.style.blockSize = '30px';
    const faint = document.createElement('p');
    faint.textContent = 'faint';
    faint.style.color = '#6b6b6b';
    faint.style.background = 'white';
    document.querySelector('main')?.append(image, tiny, faint);
    console.error('something broke');
  });
  expect(await barriers(page)).toEqual([expect.stringContaining('image-alt')]);
  expect(await sideways(page)).toBeGreaterThan(100);
  expect(await smallTargets(page, 44)).toEqual([expect.stringContaining('tiny')]);
  // Grey of 5.3:1: enough in the light theme, too faint for sunlight.
  expect(await faintTexts(page, 'light')).toEqual([]);
  expect(await faintTexts(page, 'bright')).toContainEqual(expect.stringContaining('faint'));
  expect(complaints).toEqual([expect.stringContaining('something broke')]);
  await context.close();
});

/** Opens a screen, looks at it, and closes it again: nothing thrown, a title, one heading, in each theme. */
async function look(screen: Screen, size: typeof desk, more: (page: Page, theme: string) => Promise<void>) {
  const context = screen.as
    ? await demo.contextOf(screen.as, size)
    : await demo.browser.newContext({ ...size, baseURL: screen.emptySite ? emptySite.url : demo.url });
  const { page, complaints } = await watchedPage(context, 'light');
  try {
    await page.goto(addressOf(screen));
    await settled(page);
    await more(page, 'light');
    expect(await page.title()).toMatch(/\S+.* · Seatwell$/);
    expect(await page.locator('h1').count()).toBe(1);
    expect.soft(await barriers(page)).toEqual([]);
    expect.soft(await sideways(page)).toBe(0);
    for (const theme of ['dark', 'bright']) {
      await more(page, theme);
      expect.soft(await faintTexts(page, theme), theme).toEqual([]);
      expect.soft(await sideways(page), theme).toBe(0);
    }
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
}

describe.each(screens)('$name', (screen) => {
  test('at the desk: nothing thrown, nobody shut out, every text readable in each theme', async () => {
    await look(screen, desk, (page, theme) => changeTheme(page, theme));
  });

  test('on a phone: the same, down to 320 px without scrolling sideways, for fingers and for gloves', async () => {
    await look(screen, phone, async (page, theme) => {
      expect.soft(await sideways(page)).toBe(0);
      await page.setViewportSize({ width: 320, height: 640 });
      // Who stands in the sun wears gloves.
      const gloves = theme === 'bright';
      await changeTheme(page, theme, gloves);
      expect.soft(await smallTargets(page, gloves ? 56 : 44)).toEqual([]);
    });
  });
});
