import { type LongSimulationRequest, longSimulationRuns, passesOf } from '@seatwell/calc';
import { SIMULATION_SIZES } from '@seatwell/contract';
import { COMPUTED, offeredChoices, type Way } from './choices.ts';
import { type ComputedAnswer, sequenceOf } from './computed-answer.ts';
import type { SimulationJob } from './run-simulation.ts';

/** Scattered runs of each way when nobody says how many: the 5th and 95th of a hundred stand on 25 runs each. */
export const USUAL_RUNS = 500;
export const MOST_RUNS = SIMULATION_SIZES.scatterRuns;

// The same scatter each time: a run that is repeated must show the same band.
const seed = 1;

/** Every way that a flange offers, with the computed loads last where they gain something. */
export function waysOf(boltCount: number, computed: ComputedAnswer | undefined): readonly Way[] {
  const offered = offeredChoices(boltCount);
  return sequenceOf(computed).length === 0 ? offered : [...offered, COMPUTED];
}

/** Names the cases of an answer: the ways stand in the order in which they were asked. */
export function waysOfCases(boltCount: number, count: number): readonly Way[] {
  const offered = offeredChoices(boltCount);
  return count > offered.length ? [...offered, COMPUTED] : offered.slice(0, count);
}

export interface LongRun {
  readonly body: LongSimulationRequest;
  /** Simulations in all: what its progress is counted in. */
  readonly total: number;
  /** Scattered runs that the server takes of each way at most, for so many steps. */
  readonly mostRuns: number;
}

/**
 * What the server is asked: every way of the flange under the conditions of the page, many times over.
 * @param scatterRuns runs with scattered tool loads of each way
 */
export function longRunOf(
  job: SimulationJob,
  boltCount: number,
  computed: ComputedAnswer | undefined,
  scatterRuns: number,
): LongRun {
  const { joint, target_MPa, area, passPercents, scatter_percent = 0, tilt_mm } = job;
  const options = {
    seed,
    scatter_percent,
    ...(tilt_mm === undefined ? {} : { initialTilt_mm: tilt_mm }),
  };
  const compare = waysOf(boltCount, computed).map((way) => ({
    passes: way === COMPUTED ? sequenceOf(computed) : passesOf({ ...way, passPercents }, boltCount),
    options,
  }));
  const steps = compare.reduce((sum, { passes }) => sum + passes.reduce((of, pass) => of + pass.steps.length, 0), 0);
  // Four runs of each way are not scattered: the simulation itself and the three of the gasket data.
  const mostRuns = Math.min(MOST_RUNS, Math.floor(SIMULATION_SIZES.stepsInJob / steps) - 4);
  const body = { joint, target_MPa, area, compare, scatterRuns };
  return { body, total: longSimulationRuns(body), mostRuns };
}
