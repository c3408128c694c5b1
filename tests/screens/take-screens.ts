import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { launchChromium } from '../browser/support/chromium.ts';
import { launchServer } from '../browser/support/launched-server.ts';
import { peopleOf } from '../browser/support/people.ts';
import { demoPlaces, screens } from '../browser/support/screens.ts';
import { settled, watchedPage } from '../browser/support/watched-page.ts';

interface Order {
  readonly folder: string;
  /** of the repository */
  readonly root: string;
  readonly theme: string;
  /** of the screens wanted; all where none is named */
  readonly names: readonly string[];
}

const sizes = [
  { name: 'desk', options: { viewport: { width: 1440, height: 900 } } },
  { name: 'phone', options: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true } },
] as const;

// A busy machine must not lose the pictures already taken.
const PATIENCE_MS = 90_000;

// The system's own colours, on black as most who ask for them have it.
const forcedColours = { forcedColors: 'active', colorScheme: 'dark' } as const;

/** Takes a picture of each screen of the demo at both sizes and prints the files; also what a page complained about. */
export async function takeScreens({ folder, root, theme, names }: Order): Promise<void> {
  const wanted = screens.filter(({ name, emptySite }) => !emptySite && (names.length === 0 || names.includes(name)));
  mkdirSync(folder, { recursive: true });
  const server = await launchServer(['--demo'], root);
  const browser = await launchChromium();
  try {
    const people = peopleOf(browser, server);
    const coordinator = await people.contextOf('coordinator');
    const addressOf = await demoPlaces(coordinator);
    for (const screen of wanted) {
      for (const { name, options } of sizes) {
        const wishes = { ...options, ...(theme === 'forced' ? forcedColours : {}) };
        const context = screen.as
          ? await people.contextOf(screen.as, wishes)
          : await browser.newContext({ ...wishes, baseURL: server.url });
        const { page, complaints } = await watchedPage(context, theme);
        page.setDefaultTimeout(PATIENCE_MS);
        await page.goto(addressOf(screen));
        await settled(page);
        const file = join(folder, `${screen.name}-${name}${theme === 'light' ? '' : `-${theme}`}.png`);
        await page.screenshot({ path: file, fullPage: true });
        console.log([file, ...complaints].join('\n  '));
        await context.close();
      }
    }
  } finally {
    await browser.close();
    await server.stop();
  }
}
