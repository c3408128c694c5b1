import type { Page } from 'playwright-core';
import { uuidv7 } from 'uuidv7';
import { type ListedJoint, listJoint, type Shutdown } from '../api/support/shutdown.ts';
import { onMake } from '../api/support/work.ts';
import { openBenchBrowser } from './support/bench-page.ts';
import { type BenchShutdown, openBenchShutdown, send } from './support/bench-shutdown.ts';
import { Listeners } from './support/listeners.ts';
import { type Replica, startReplica } from './support/replicas.ts';
import { percentile, rounded } from './support/statistics.ts';

const STREAMS = 2_000;
const COMMANDS = 60;
const CHANGES = 30;

/**
 * From the answer that a record is kept to whoever looks at it: to 2,000 streams that hang on two processes with one
 * database, whichever of the two recorded it; and to the frame that shows it in another browser.
 */
export async function bench(): Promise<object> {
  const plant = await openBenchShutdown();
  const { shutdown } = plant;
  Object.defineProperty(shutdown.plant, 'now', { get: () => new Date(), set: () => undefined });
  const joint = await listJoint(shutdown);
  for (let index = 0; index < 199; index += 1) await listJoint(shutdown);
  const screen = await toScreen(plant, joint);
  const replicas = [await startReplica(plant.databaseUrl), await startReplica(plant.databaseUrl)];
  const streams = await toStreams(plant, joint, replicas);
  for (const replica of replicas) await replica.stop();
  await plant.close();
  return { streams, screen };
}

/** Commands sent to the two processes in turn, and heard by every stream of both. */
async function toStreams(
  { shutdown, cookie }: BenchShutdown,
  joint: ListedJoint,
  replicas: readonly Replica[],
): Promise<object> {
  const at = (index: number) => replicas[index % replicas.length]?.url ?? '';
  const before_MB = replicas.map((replica) => replica.resident_MB());
  const listeners = new Listeners();
  const live = (index: number) => `${at(index)}/api/v1/shutdowns/${shutdown.shutdownId}/live`;
  await listeners.open(STREAMS, live, cookie);
  const times: number[] = [];
  for (let count = 0; count < COMMANDS; count += 1) {
    // Not in step with the rounds in which the processes look at the heads.
    await new Promise((resolve) => setTimeout(resolve, 150 + Math.random() * 500));
    const version = await place(at(count), cookie, shutdown, joint);
    const committed = performance.now();
    await listeners.untilHeard(version);
    for (const heard of listeners.heard.get(version) ?? []) times.push(Math.max(0, heard - committed));
  }
  const after_MB = replicas.map((replica) => replica.resident_MB());
  listeners.close();
  const grown_MB = after_MB.reduce((sum, each, index) => sum + each - (before_MB[index] ?? 0), 0);
  return {
    streams: STREAMS,
    replicas: replicas.length,
    commands: COMMANDS,
    heard: times.length,
    p50_ms: Math.round(percentile(times, 0.5)),
    p95_ms: Math.round(percentile(times, 0.95)),
    longest_ms: rounded(Math.max(...times), 0),
    resident_MB: after_MB.map((each) => Math.round(each)),
    grown_kB_perStream: rounded((grown_MB * 1024) / STREAMS, 1),
  };
}

/** One hold, placed again and again, so that the state does not grow. @returns the stream's version after it */
async function place(url: string, cookie: string, shutdown: Shutdown, joint: ListedJoint): Promise<number> {
  const answer = await send(`${url}/api/v1/shutdowns/${shutdown.shutdownId}/commands/hold-placed`, cookie, 'POST', {
    eventId: uuidv7(),
    v: 1,
    subjectId: joint.jointId,
    deviceTime: new Date().toISOString(),
    payload: { holdId: joint.makeId, reason: 'bench', releasedBy: 'coordinator' },
  });
  return (JSON.parse(answer) as { sequence: number }).sequence;
}

/** A crew's day is changed, and the register that somebody else has open shows the other day. */
async function toScreen(plant: BenchShutdown, joint: ListedJoint): Promise<object> {
  const { shutdown } = plant;
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
