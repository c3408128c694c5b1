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

type Rules = { readonly type: 'tag' | 'rule'; readonly values: string[] };

async function found(page: Page, runOnly: Rules): Promise<string[]> {
  await atRest(page);
  await page.evaluate(source);
  return page.evaluate(async (only) => {
    const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
    const { violations } = await axe.run(document, { runOnly: only, resultTypes: ['violations'] });
    return violations.flatMap(({ id, nodes }) =>
      nodes.slice(0, 3).map((node) => `${id}: ${node.html.slice(0, 200)} ${node.any[0]?.message ?? ''}`),
    );
  }, runOnly);
}

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe finds against WCAG 2.2 A and AA, in words. */
export const barriers = (page: Page): Promise<string[]> => found(page, { type: 'tag', values: tags });

/** Texts too faint for their theme: below 4.5:1 (WCAG 2.2, 1.4.3), in the one for sunlight below 7:1 (1.4.6). */
export const faintTexts = (page: Page, theme: string): Promise<string[]> =>
  found(page, { type: 'rule', values: [theme === 'bright' ? 'color-contrast-enhanced' : 'color-contrast'] });

/** How far the page reaches beyond the screen sideways, px. */
export const sideways = (page: Page): Promise<number> =>
  // Where room is kept for a bar that is not there, the page is narrower than its frame: that is no overflow.
  page.evaluate(() => Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth));

/**
 * Controls that a finger misses (WCAG 2.2, 2.5.5: 44 px): lower or narrower than `least_px`, their label counted in.
 * Links inside of a text do not count.
 */
export const smallTargets = (page: Page, least_px: number): Promise<string[]> =>
  page.evaluate((least) => {
    const controls = 'button, select, textarea, summary, [role=tab], [role=combobox], input:not([type=hidden])';
    return [...document.querySelectorAll<HTMLElement>(controls)].flatMap((control) => {
      const boxes = [control, control.closest('label'), ...((control as HTMLInputElement).labels ?? [])]
        .filter((each) => each !== null)
        .map((each) => each.getBoundingClientRect());
      const height = Math.max(...boxes.map((box) => box.height));
      const width = Math.max(...boxes.map((box) => box.width));
      if (!control.checkVisibility({ visibilityProperty: true }) || width <= 1 || height <= 1) return [];
      // Half a pixel is rounding.
      return Math.min(height, width) >= least - 0.5
        ? []
        : [`${Math.round(width)} × ${Math.round(height)} px: ${control.outerHTML.slice(0, 160)}`];
    });
  }, least_px);

/** Texts of which a part is hidden by their own box. */
export const cutTexts = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('body *')].flatMap((element) => {
      const speaks = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
      const { overflowX, overflowY, clipPath } = getComputedStyle(element);
      const hidesWidth = overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 1;
      const hidesHeight = overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 1;
      if (!speaks || clipPath !== 'none' || !element.checkVisibility() || !(hidesWidth || hidesHeight)) return [];
      return [`${element.textContent?.slice(0, 60)}: ${element.outerHTML.slice(0, 120)}`];
    }),
  );

/** What would still move although the device asks for stillness. */
export const moving = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('body *')].flatMap((element) => {
      const { animationName, animationDuration, transitionDuration } = getComputedStyle(element);
      const lasts = (durations: string) => durations.split(',').some((each) => Number.parseFloat(each) > 0);
      return (animationName !== 'none' && lasts(animationDuration)) || lasts(transitionDuration)
        ? [element.outerHTML.slice(0, 120)]
        : [];
    }),
  );
