import type { Database } from '../../apps/server/src/platform/database/pool.ts';
import { enterEngineering } from './engineering.ts';
import { type DemoAccount, engagePeople, registerTools } from './people-and-tools.ts';
import { SeededRandom } from './random.ts';
import { Recorder } from './recorder.ts';
import { scheduleStory } from './story.ts';
import { daysAfter, Timetable } from './timetable.ts';

export const DEMO_SEED = 20_260;
const DAYS_SINCE_START = 10;

/**
 * Loads the demo shutdown: a story of our own, told through the command path of real use with the clock of the story,
 * the same for the same seed and the same present.
 * @param present the moment at which the story stands still: when the demo is loaded
 * @param progress called with a share from 0 to 1
 * @returns one account for each role, and one each for every crew's chargehand and technician
 */
export async function loadDemo(
  db: Database,
  present: Date,
  progress: (share: number) => void = () => {},
): Promise<readonly DemoAccount[]> {
  const midnight = new Date(`${present.toISOString().slice(0, 10)}T00:00:00Z`);
  const start = daysAfter(midnight, -DAYS_SINCE_START);
  const story = new Recorder(db, new SeededRandom(DEMO_SEED), daysAfter(start, -4));
  const cast = await engagePeople(story);
  const tools = await registerTools(story, cast.by.inspector);
  const engineering = await enterEngineering(story, cast);
  const timetable = new Timetable();
  await scheduleStory({ story, cast, tools, engineering, timetable }, start, present);
  await timetable.play(present, (at) => story.until(at), progress);
  return cast.accounts;
}
