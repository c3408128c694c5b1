import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ListedJoint, listJoint } from '../api/support/shutdown.ts';
import { engineer, makeState, release } from '../api/support/work.ts';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { desk } from './support/gallery.ts';
import { openPage } from './support/watched-page.ts';

let plant: BuiltPlant;
let joint: ListedJoint;
let register: Page;
let jointPage: Page;
const loads: string[] = [];
const complaints: string[][] = [];

/** A page in a browser of its own; every further load of it is noted. */
async function openIn(role: string, path: string): Promise<Page> {
  const watched = await openPage(await plant.contextOf(role, desk), plant.at(path));
  complaints.push(watched.complaints);
  watched.page.on('load', (page) => loads.push(page.url()));
  return watched.page;
}

beforeAll(async () => {
  plant = await openBuiltPlant();
  joint = await listJoint(plant.shutdown);
  register = await openIn('coordinator', '/register');
  jointPage = await openIn('engineer', `/joints/${joint.jointId}`);
});
afterAll(() => plant?.close());

const row = (tag: string) => register.getByRole('row', { name: new RegExp(`${tag}\\b`) });

describe('two people look at the same shutdown, and a third records', () => {
  it('shows a new joint in the register that somebody has open', async () => {
    const { tag } = await listJoint(plant.shutdown);
    await row(tag).waitFor();
  });

  it('shows a joint at its new stage on the register and on its own page', async () => {
    expect(await row(joint.tag).textContent()).toContain('planned');
    await engineer(plant.shutdown, joint);
    await row(joint.tag).getByText('engineered').waitFor();
    await jointPage.locator('main').getByText('engineered').first().waitFor();
    await release(plant.shutdown, joint);
    await row(joint.tag).getByText('released').waitFor();
    await jointPage.locator('main').getByText('released').first().waitFor();
    expect((await makeState(plant.shutdown, joint)).stage).toBe('released');
  });

  it('did so without loading a page again', () => {
    expect(loads).toEqual([]);
    expect(complaints.flat()).toEqual([]);
  });
});
