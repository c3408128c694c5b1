import type { JointPage } from '@seatwell/contract';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { PASSWORD } from '../api/support/plant.ts';
import { type Tale, taleTo } from '../api/support/tale.ts';
import { holdTalk } from '../api/support/talk.ts';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { hoursAgo } from './support/crew-plant.ts';
import { button, inDialog, sign } from './support/dialogs.ts';
import { desk, phone } from './support/gallery.ts';
import { read } from './support/people.ts';
import { picture } from './support/running-plant.ts';
import { settled, watchedPage } from './support/watched-page.ts';

let plant: BuiltPlant;
let tight: Tale;
let handedOver: Tale;

beforeAll(async () => {
  plant = await openBuiltPlant();
  const { shutdown } = plant;
  // Their lives were told before today; the browser goes on now.
  await hoursAgo(plant, 72, async () => {
    await holdTalk(shutdown);
    handedOver = await taleTo(shutdown, 'handed over');
    tight = await taleTo(shutdown, 'tight', { criticality: 'A' });
  });
});
afterAll(() => plant?.close());

async function jointPage(role: string, size: typeof desk, tale: Tale): Promise<{ page: Page; complaints: string[] }> {
  const watched = await watchedPage(await plant.contextOf(role, size));
  await watched.page.goto(plant.at(`/joints/${tale.jointId}`));
  await settled(watched.page);
  return watched;
}

const stageOf = async (page: Page, tale: Tale): Promise<string | undefined> => {
  const path = `/shutdowns/${plant.shutdown.shutdownId}/joints/${tale.jointId}`;
  return (await read<JointPage>(page.context(), path)).makes[0]?.stage;
};

it('the client’s witness waives the point of a critical joint, with a reason and signed', async () => {
  const { page, complaints } = await jointPage('witness', phone, tight);
  await button(page, 'More actions').click();
  await button(page, 'Waive the witness point').click();
  await inDialog(page, 'Sign', async (dialog) => {
    await dialog.getByLabel('Reason').fill('Two joints of this line were witnessed this morning.');
    await dialog.getByLabel(/password/i).fill(PASSWORD);
    await picture(page, 'waive-witness-point');
  });
  await page.getByText('Witness point waived: Two joints of this line were witnessed this morning.').waitFor();
  expect(await page.getByText(/Waits for client/).count()).toBe(0);
  expect(complaints).toEqual([]);
  await page.context().close();
});

it('operations take a joint back from hand-over, and it is proven again', async () => {
  const { page, complaints } = await jointPage('operations', desk, handedOver);
  expect(await stageOf(page, handedOver)).toBe('handed-over');
  await button(page, 'More actions').click();
  await button(page, 'Take back from hand-over').click();
  await page.getByRole('dialog').getByLabel('Reason').fill('Weeps at start-up');
  await picture(page, 'take-back');
  await sign(page, 'Take back from hand-over');
  await page.getByText('Taken back from hand-over: Weeps at start-up').waitFor();
  expect(await stageOf(page, handedOver)).toBe('proven');
  expect(complaints).toEqual([]);
  await page.context().close();
});
