import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ListedJoint, listJoint } from '../api/support/shutdown.ts';
import { engineer } from '../api/support/work.ts';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { desk } from './support/gallery.ts';
import { settled, watchedPage } from './support/watched-page.ts';

let plant: BuiltPlant;
let joint: ListedJoint;
let page: Page;
let complaints: readonly string[];

beforeAll(async () => {
  plant = await openBuiltPlant();
  // Without its own direction a tag that starts with digits shows as SP41-F3-10-01.
  joint = await listJoint(plant.shutdown, { tag: '10-01-SP41-F3' });
  await engineer(plant.shutdown, joint);
  const watched = await watchedPage(await plant.contextOf('engineer', desk));
  ({ page, complaints } = watched);
  await page.addInitScript(() => localStorage.setItem('language', 'ar'));
});
afterAll(() => plant?.close());

/** The letters of a text on the page from left to right, as the eye meets them. */
const asSeen = (wanted: string) =>
  page.evaluate((text) => {
    const walker = document.createTreeWalker(document.querySelector('main') ?? document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const node = walker.currentNode as Text;
      const start = node.data.indexOf(text);
      if (start < 0 || !node.parentElement?.checkVisibility()) continue;
      const letters = [...text].map((letter, index) => {
        const range = document.createRange();
        range.setStart(node, start + index);
        range.setEnd(node, start + index + 1);
        return { letter, left: range.getBoundingClientRect().left };
      });
      return letters
        .toSorted((a, b) => a.left - b.left)
        .map(({ letter }) => letter)
        .join('');
    }
    return `“${text}” is not on the page`;
  }, wanted);

describe('in Arabic', () => {
  it('the page is written from right to left, and its navigation stands on the right', async () => {
    await page.goto(plant.at('/register'));
    await settled(page);
    expect(await page.evaluate(() => document.documentElement.dir)).toBe('rtl');
    const navigation = await page.getByRole('navigation').first().boundingBox();
    const main = await page.locator('main').boundingBox();
    expect(navigation?.x).toBeGreaterThan(main?.x ?? Number.POSITIVE_INFINITY);
  });

  it('a tag in the register reads from left to right', async () => {
    await page.getByText(joint.tag).first().waitFor();
    expect(await asSeen(joint.tag)).toBe(joint.tag);
  });

  it('the bolt plan is not mirrored: bolt 2 stands to the right of bolt 1, clockwise', async () => {
    await page.goto(plant.at(`/joints/${joint.jointId}`));
    await settled(page);
    expect(await asSeen(joint.tag)).toBe(joint.tag);
    const places = await page.evaluate(() =>
      ['1', '2'].map((number) => {
        const bolts = [...document.querySelectorAll('main svg text')];
        const bolt = bolts.find(({ textContent }) => textContent?.replaceAll(/[\u2066-\u2069]/g, '') === number);
        return bolt?.getBoundingClientRect().left;
      }),
    );
    expect(places[1]).toBeGreaterThan(places[0] ?? Number.POSITIVE_INFINITY);
  });

  it('what is copied has no marks in it, so that a tag is found again', async () => {
    const copied = await page.evaluate(() => {
      document.getSelection()?.selectAllChildren(document.querySelector('h1') ?? document.body);
      const event = new ClipboardEvent('copy', { clipboardData: new DataTransfer(), bubbles: true, cancelable: true });
      document.querySelector('h1')?.dispatchEvent(event);
      return event.clipboardData?.getData('text/plain');
    });
    expect(copied).toBe(joint.tag);
  });

  it('nothing is complained about', () => {
    expect(complaints).toEqual([]);
  });
});
