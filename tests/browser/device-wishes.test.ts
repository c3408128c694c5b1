import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { cutTexts, moving, sideways } from './support/barriers.ts';
import { launchChromium } from './support/chromium.ts';
import { type Demo, openDemo } from './support/demo.ts';
import { desk, phone } from './support/gallery.ts';
import { demoPlaces, type Screen, screens } from './support/screens.ts';
import { settled, watchedPage } from './support/watched-page.ts';

let demo: Demo;
let largeLetters: Browser;
let addressOf: (screen: Screen) => string;

beforeAll(async () => {
  demo = await openDemo();
  // What somebody sets in the browser who needs letters twice as large: 32 px instead of 16.
  largeLetters = await launchChromium(['--blink-settings=defaultFontSize=32']);
  const coordinator = await demo.contextOf('coordinator');
  addressOf = await demoPlaces(coordinator);
  await coordinator.close();
});
afterAll(async () => {
  await largeLetters?.close();
  await demo?.close();
});

/** Opens a screen on a device with wishes of its own, and closes it again. */
async function onDevice(
  name: string,
  wishes: BrowserContextOptions,
  look: (page: Page) => Promise<void>,
  browser = demo.browser,
): Promise<void> {
  const screen = screens.find((each) => each.name === name);
  if (!screen?.as) throw new Error(`There is no screen "${name}" of somebody who is signed in.`);
  const signedIn = await demo.contextOf(screen.as);
  const storageState = await signedIn.storageState();
  await signedIn.close();
  const context = await browser.newContext({ baseURL: demo.url, storageState, ...wishes });
  const { page, complaints } = await watchedPage(context);
  try {
    await page.goto(addressOf(screen));
    await settled(page);
    await look(page);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
}

describe.each(['dark', 'light'] as const)('where the system forces its own colours, on %s', (colorScheme) => {
  const forced = { ...desk, forcedColors: 'active', colorScheme } as const;

  test('the page in use is told from the others, and the view in use', async () => {
    await onDevice('areas', forced, async (page) => {
      const edge = (selector: string, side: string) =>
        page
          .locator(selector)
          .first()
          .evaluate((element, name) => getComputedStyle(element).getPropertyValue(name), side);
      const start = 'border-inline-start-color';
      expect(await edge('nav a[aria-current=page]', start)).not.toBe(await edge('nav a:not([aria-current])', start));
      const under = 'border-block-end-color';
      expect(await edge('[role=tab][data-state=active]', under)).not.toBe(
        await edge('[role=tab][data-state=inactive]', under),
      );
    });
  });

  test.each(['register', 'joint'])(
    'the drawings of %s stand out from the ground that the system chose',
    async (name) => {
      await onDevice(name, forced, async (page) => {
        expect(await faintDrawings(page)).toEqual([]);
      });
    },
  );
});

/** Drawings whose darkest or lightest stroke stands out less than 3:1 from the page (WCAG 2.2, 1.4.11). */
const faintDrawings = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
    const luminance = (colour: string) => {
      if (!canvas) throw new Error('There is no canvas to read a colour with.');
      canvas.fillStyle = colour;
      canvas.fillRect(0, 0, 1, 1);
      const [red = 0, green = 0, blue = 0] = [...canvas.getImageData(0, 0, 1, 1).data].map((byte) => {
        const share = byte / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const ground = luminance(getComputedStyle(document.body).backgroundColor);
    const drawings = [...document.querySelectorAll('#page svg')];
    if (drawings.length === 0) throw new Error('There is no drawing on the page.');
    return drawings.flatMap((drawing) => {
      const ratios = [...drawing.querySelectorAll('[stroke]')]
        .map((part) => getComputedStyle(part).stroke)
        .filter((stroke) => stroke.startsWith('rgb'))
        .map(luminance)
        .map((light) => (Math.max(light, ground) + 0.05) / (Math.min(light, ground) + 0.05));
      return ratios.length > 0 && Math.max(...ratios) < 3 ? [drawing.outerHTML.slice(0, 160)] : [];
    });
  });

describe('where the device asks for stillness', () => {
  const still = { ...phone, reducedMotion: 'reduce' } as const;

  test('nothing moves on the page or in a sheet over it', async () => {
    await onDevice('my-joints', still, async (page) => {
      expect(await moving(page)).toEqual([]);
      await page.getByRole('button', { name: 'More' }).click();
      await page.getByRole('dialog').waitFor();
      expect(await moving(page)).toEqual([]);
    });
  });

  test('and where it does not, the check sees what moves', async () => {
    await onDevice('my-joints', phone, async (page) => {
      await page.getByRole('button', { name: 'More' }).click();
      await page.getByRole('dialog').waitFor();
      expect(await moving(page)).not.toEqual([]);
    });
  });
});

describe('with letters twice as large', () => {
  const wide: BrowserContextOptions = { viewport: { width: 1920, height: 1080 } };

  test('they are twice as large', async () => {
    await onDevice(
      'today',
      desk,
      async (page) => {
        expect(await page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize))).toBeGreaterThan(
          31,
        );
      },
      largeLetters,
    );
  });

  test.each(['today', 'register', 'joint', 'my-joints', 'tighten', 'areas'])(
    '%s loses no word and does not scroll sideways',
    async (name) => {
      for (const size of [phone, desk, wide]) {
        await onDevice(
          name,
          size,
          async (page) => {
            expect.soft(await sideways(page), `${size.viewport?.width} px`).toBe(0);
            expect.soft(await cutTexts(page), `${size.viewport?.width} px`).toEqual([]);
          },
          largeLetters,
        );
      }
    },
  );
});
