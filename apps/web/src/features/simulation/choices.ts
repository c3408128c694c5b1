import { type PatternChoice, SEQUENCE_PATTERNS, usualChoices } from '@seatwell/calc';
import { textOf } from '../../app/search-params.ts';

export const SIMULATION_INPUTS = [
  'standard',
  'size',
  'rating',
  'boltCount',
  'kind',
  'family',
  'contactInside_mm',
  'contactOutside_mm',
  'stress_MPa',
  'area',
  'passes',
  'first',
  'second',
  'scatter_percent',
  'tilt_mm',
  'limit_percent',
  'toolsAtOnce',
  'grade',
  'nutFactor',
  'boltShare_percent',
  'gasketMaximum_MPa',
  'division_Nm',
  'setValues',
  'runs',
  'run',
] as const;
export type SimulationInput = (typeof SIMULATION_INPUTS)[number];
export type SimulationInputs = Readonly<Partial<Record<SimulationInput, string>>>;

export function readSimulationInputs(search: Readonly<Record<string, unknown>>): SimulationInputs {
  const read: Partial<Record<SimulationInput, string>> = {};
  for (const name of SIMULATION_INPUTS) {
    const value = textOf(search[name]);
    if (value !== undefined) read[name] = value;
  }
  return read;
}

/** A change of the inputs; a long run is of the inputs that it was started with, and goes with them. */
export const withoutRun = (change: SimulationInputs): SimulationInputs => ({ run: '', ...change });

/** What stands in a column: a pattern, or the computed loads of this flange. */
export type Way = PatternChoice | 'computed-loads';

export const COMPUTED = 'computed-loads';

export const readWay = (written: string | undefined, fallback: PatternChoice['pattern']): Way =>
  written === COMPUTED ? COMPUTED : readChoice(written, fallback);

export const writeWay = (way: Way): string => (way === COMPUTED ? COMPUTED : writeChoice(way));

/** A way of tightening as the address writes it: `legacy`, `simultaneous 4`. */
export function readChoice(written: string | undefined, fallback: PatternChoice['pattern']): PatternChoice {
  const [name, tools] = (written ?? '').split(' ');
  const pattern = SEQUENCE_PATTERNS.find((each) => each === name) ?? fallback;
  const count = Number(tools);
  return pattern.startsWith('simultaneous')
    ? { pattern, tools: Number.isInteger(count) && count > 1 ? count : 2 }
    : { pattern };
}

export function writeChoice({ pattern, tools }: PatternChoice): string {
  return tools === undefined ? pattern : `${pattern} ${tools}`;
}

/** The ways that a flange of so many bolts offers, with all tools of the trade. */
export const offeredChoices = (boltCount: number): readonly PatternChoice[] => usualChoices(boltCount, 8);
