import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Waits until nothing fades or moves any more: half faded in, a colour is that of a moment. What runs for ever does not count. */
export const atRest = (page: Page): Promise<unknown> =>
  page.evaluate(() =>
    Promise.all(
      document
        .getAnimations()
        .filter((animation) => animation.effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY)
        .map((animation) => animation.finished.catch(() => {})),
    ),
  );

/** What axe finds as serious or critical against WCAG 2.2 A and AA, in words. */
export async function barriers(page: Page): Promise<string[]> {
  await atRest(page);
  await page.evaluate(source);
  return page.evaluate(async () => {
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
    const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
    const found = await axe.run(document, { runOnly: { type: 'tag', values: tags } });
    return found.violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) => nodes.slice(0, 3).map((node) => `${id}: ${node.html.slice(0, 200)}`));
  });
}

/** How far the page reaches beyond the screen sideways, px. */
export const sideways = (page: Page): Promise<number> =>
  // Where room is kept for a bar that is not there, the page is narrower than its frame: that is no overflow.
  page.evaluate(() => Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth));
