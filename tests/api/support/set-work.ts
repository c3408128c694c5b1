import type { Payload } from '@seatwell/contract';
import type { Shutdown } from './shutdown.ts';
import { wait } from './work.ts';

type Pass = Payload<'pass-recorded'>;

/**
 * Passes of twelve bolts, twenty minutes each, that are set by something else than a torque.
 * @param tools that they are made with
 * @param setOf what the crew says was set, from its value
 */
export function passesSetBy(shutdown: Shutdown, tools: Pass['tools'], setOf: (value: number) => Pass['set']) {
  const work = (value: number) => {
    const startedAt = shutdown.plant.now.toISOString();
    wait(shutdown, 20);
    return { set: setOf(value), tools, startedAt, endedAt: shutdown.plant.now.toISOString() };
  };
  const pass = (number: number, value: number): Pass => ({
    ...work(value),
    pass: number,
    outcome: 'finished',
    lastBolt: null,
    boltsDone: 12,
    why: null,
    gapsChecked_mm: null,
  });
  return { work, pass };
}
