import type { RestartAnswer } from '@seatwell/contract';
import { type MakeState, passCountOf, restartFrom, shiftAt } from '@seatwell/workflow';
import type { ShutdownRow } from '../shutdowns/load-shutdown.ts';
import type { Names } from './names.ts';

/** Where tightening begins or goes on, with who left it; null when it is not a make to be tightened now. */
export function restartOf(make: MakeState, shutdown: ShutdownRow, names: Names, now: string): RestartAnswer | null {
  const restart = restartFrom(make);
  if (!restart) return null;
  const { shifts, timeZone } = shutdown;
  const left = make.partTight;
  const leftOvernight =
    make.lastEventAt !== null &&
    shiftAt(make.lastEventAt, shifts, timeZone).start !== shiftAt(now, shifts, timeZone).start;
  return {
    pass: restart.pass,
    passCount: passCountOf(make),
    finalRound: restart.finalRound,
    repeats: restart.repeats,
    leftAt: restart.leftAt,
    leftBy: names.all(restart.leftBy),
    lastBolt: left?.lastBolt ?? null,
    boltsDone: left?.boltsDone ?? 0,
    why: left?.why ?? null,
    leftOvernight: make.stage === 'part-tight' && leftOvernight,
  };
}
