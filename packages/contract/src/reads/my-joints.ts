import { z } from 'zod';
import { instant, role } from '../primitives.ts';
import { crewRef, eventType, restartAnswer, waitsForAnswer } from './common.ts';
import { jointRow } from './register.ts';

/** `GET /my-joints`: in the order of what can be done now. */
export const myJointsAnswer = z.object({
  now: instant,
  /** the crews that the caller is in; without one, what waits for the caller's roles */
  crews: z.array(crewRef),
  roles: z.array(role),
  rows: z.array(
    jointRow.extend({
      /** `part-tight` first, then `now`, then `waiting` for somebody else */
      can: z.enum(['part-tight', 'now', 'waiting']),
      /** why it cannot be worked on now; null where it can */
      blockedBy: waitsForAnswer.nullable(),
      /** the caller's events that have their place in the life of the make now */
      nextSteps: z.array(eventType),
      restart: restartAnswer.nullable(),
    }),
  ),
  /** more than 500 joints: the rest is in the register */
  truncated: z.boolean(),
});
export type MyJointsAnswer = z.infer<typeof myJointsAnswer>;
export type MyJointRow = MyJointsAnswer['rows'][number];
