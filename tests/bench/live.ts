import type { Page } from 'playwright-core';
import { listJoint } from '../api/support/shutdown.ts';
import { onMake } from '../api/support/work.ts';
import { openBenchBrowser } from './support/bench-page.ts';
import { openBenchShutdown } from './support/bench-shutdown.ts';
import { percentile, rounded } from './support/statistics.ts';

const CHANGES = 30;

/**
 * From the answer that a record is kept to the frame that shows it in another browser: a crew's day is changed, and
 * the register that somebody else has open shows the other day.
 */
export async function bench(): Promise<object> {
  const plant = await openBenchShutdown();
  const { shutdown } = plant;
  Object.defineProperty(shutdown.plant, 'now', { get: () => new Date(), set: () => undefined });
  const joint = await listJoint(shutdown);
  for (let index = 0; index < 199; index += 1) await listJoint(shutdown);
  const { browser, open } = await openBenchBrowser(plant);
  const page = await open(`/register?search=${joint.tag}`);
  const row = page.locator('[role=row][data-index="0"]');
  await row.waitFor();
  const times: number[] = [];
  for (let change = 0; change < CHANGES; change += 1) {
    // Calm between the changes, so that each is measured alone.
    await page.waitForTimeout(400);
    times.push(await changedAndSeen(page, () => assign(change)));
  }
  await browser.close();
  await plant.close();
  return {
    changes: CHANGES,
    p50_ms: Math.round(percentile(times, 0.5)),
    p95_ms: Math.round(percentile(times, 0.95)),
    longest_ms: rounded(Math.max(...times), 0),
  };

  async function assign(change: number): Promise<void> {
    await onMake(shutdown, joint).must(shutdown.coordinator, 'make-assigned', {
      crewId: shutdown.crewId,
      plannedOn: `2027-03-${String(10 + (change % 15)).padStart(2, '0')}`,
    });
  }
}

/** ms from the commit's answer to the first frame in which the row reads otherwise; both clocks are this machine's. */
async function changedAndSeen(page: Page, change: () => Promise<void>): Promise<number> {
  const painted = page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const read = () => document.querySelector('[role=row][data-index="0"]')?.textContent;
        const was = read();
        const look = () => {
          if (read() === was) requestAnimationFrame(look);
          else requestAnimationFrame(() => resolve(Date.now()));
        };
        look();
      }),
  );
  await change();
  const committed = Date.now();
  return Math.max(0, (await painted) - committed);
}
