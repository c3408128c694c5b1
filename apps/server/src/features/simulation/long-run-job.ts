import { setImmediate as nextTurn } from 'node:timers/promises';
import { CalcRefusal, type LongSimulation, type LongSimulationRequest, longSimulation } from '@seatwell/calc';
import { Problem } from '../../platform/errors/problem.ts';
import type { JobWork } from '../../platform/jobs/queue.ts';

export const SIMULATION_JOB = 'simulate-tightening';

/** Runs between two writings of how far the job is. */
const PROGRESS_EVERY = 20;

/** Simulates many sequences run by run, with others answered between the runs; a repeat gives the same numbers. */
export const longRunJob: JobWork = async ({ input, progress }): Promise<LongSimulation> => {
  try {
    const runs = longSimulation(input as LongSimulationRequest);
    for (;;) {
      const { done, value } = runs.next();
      if (done) return value;
      if (value % PROGRESS_EVERY === 0) await progress(value);
      else await nextTurn();
    }
  } catch (error) {
    if (!(error instanceof CalcRefusal)) throw error;
    throw new Problem(
      'calculation-refused',
      error.message,
      error.errors.map((item) => ({ ...item })),
    );
  }
};
