import type { CDPSession, Page } from 'playwright-core';
import { fillRegister } from '../api/support/many-joints.ts';
import { listJoint } from '../api/support/shutdown.ts';
import { openBenchBrowser } from './support/bench-page.ts';
import { openBenchShutdown } from './support/bench-shutdown.ts';
import { percentile, rounded } from './support/statistics.ts';

const JOINTS = 100_000;
const SLOWER = 4;
const SECONDS = 10;

/**
 * Scrolls a register of 100,000 joints with the wheel, on a processor slowed four times: first down through rows
 * that are fetched on the way, then up and down through rows that are there. Frame times as the page sees them; `bare`
 * is a list of the same height with plain lines in it, in the same browser: what no table can be faster than.
 */
export async function bench(): Promise<object> {
  const plant = await openBenchShutdown();
  const { jointId } = await listJoint(plant.shutdown, { tag: 'U0-0000000' });
  await fillRegister(plant.databaseUrl, jointId, JOINTS);
  const { browser, context, open } = await openBenchBrowser(plant);
  const page = await open('/register');
  await page.locator('[role=row][data-index="0"]').waitFor();
  const devtools = await context.newCDPSession(page);
  await devtools.send('HeapProfiler.enable');
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  await page.getByRole('grid').hover();
  const before = await heap_MB(devtools);
  const fetching = await framesWhile(page, (turn) => page.mouse.wheel(0, turn % 5 === 4 ? 3_000 : 600));
  const loaded = await heap_MB(devtools);
  const moving = await framesWhile(page, (turn) => page.mouse.wheel(0, turn % 40 < 20 ? -900 : 900));
  const after = await heap_MB(devtools);
  const rows = await page.locator('[role=row]').count();
  await showBareList(page);
  const bare = await framesWhile(page, (turn) => page.mouse.wheel(0, turn % 40 < 20 ? 900 : -900));
  await browser.close();
  await plant.close();
  return {
    joints: JOINTS,
    slower: SLOWER,
    fetching: summary(fetching),
    moving: summary(moving),
    bare: summary(bare),
    ratio_p95: rounded(percentile(moving, 0.95) / percentile(bare, 0.95)),
    rowNodes: rows,
    heap_MB: { before, afterFetching: loaded, afterMoving: after },
  };
}

/** Puts a scroller of the table's size into the place of the whole page: lines that are there, and no script. */
const showBareList = (page: Page): Promise<void> =>
  page.evaluate((lines) => {
    const frame = document.createElement('div');
    frame.setAttribute('role', 'grid');
    frame.style.cssText = 'block-size: 68vh; overflow: auto';
    for (let line = 0; line < lines; line += 1) {
      const row = document.createElement('div');
      row.style.cssText = 'block-size: 38px; contain: strict';
      row.textContent = `U0-${line} NPS 6 · Class 300, listed`;
      frame.append(row);
    }
    document.body.replaceChildren(frame);
  }, 1000);

const summary = (frames_ms: readonly number[]) => ({
  frames: frames_ms.length,
  p50_ms: rounded(percentile(frames_ms, 0.5), 1),
  p95_ms: rounded(percentile(frames_ms, 0.95), 1),
  longest_ms: rounded(Math.max(...frames_ms), 1),
});

/** Turns the wheel for some seconds; the times between the page's frames. */
async function framesWhile(page: Page, turnWheel: (turn: number) => Promise<void>): Promise<number[]> {
  await page.evaluate(() => {
    const kept = globalThis as unknown as { frames: number[]; running: boolean };
    kept.frames = [];
    kept.running = true;
    let last = performance.now();
    const next = (now: number) => {
      kept.frames.push(now - last);
      last = now;
      if (kept.running) requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  const begin = performance.now();
  for (let turn = 0; performance.now() - begin < SECONDS * 1000; turn += 1) await turnWheel(turn);
  return page.evaluate(() => {
    const kept = globalThis as unknown as { frames: number[]; running: boolean };
    kept.running = false;
    return kept.frames.slice(1);
  });
}

async function heap_MB(devtools: CDPSession): Promise<number> {
  await devtools.send('HeapProfiler.collectGarbage');
  const { usedSize } = await devtools.send('Runtime.getHeapUsage');
  return rounded(usedSize / 1_048_576, 1);
}
