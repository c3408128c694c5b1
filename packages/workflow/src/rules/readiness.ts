import type { PackContext, PackFacts } from '../context.ts';
import { type Finding, list } from './rule.ts';
import { notCalibrated } from './tools.ts';

type Readiness = NonNullable<PackFacts['released']>;

export interface ReadinessRule {
  readonly what: string;
  readonly sentence: string;
  readonly why: string;
  readonly remedy: string;
  readonly clearedBy: readonly ('inspector' | 'operations')[];
  readonly test: (released: Readiness, context: PackContext) => Finding | null;
}

/** What has to be so before pressure is put on a pack: asked at its release, and again at each proof. */
export const READINESS: readonly ReadinessRule[] = [
  {
    what: 'boundary-walked',
    sentence: 'The boundary of the pack was walked.',
    why: 'A valve or blind that is not where the drawing has it sends the pressure elsewhere.',
    remedy: 'Walk the boundary against the drawing.',
    clearedBy: ['inspector', 'operations'],
    test: ({ boundaryWalked }) => (boundaryWalked ? null : { detail: 'The boundary was not walked.' }),
  },
  {
    what: 'blinds-rated',
    sentence: 'Every blind of the pack is rated for the test pressure.',
    why: 'A blind that is too thin lets go under test.',
    remedy: 'Fit blinds of the rating.',
    clearedBy: ['inspector'],
    test: ({ blindsRated }) => (blindsRated ? null : { detail: 'The rating of the blinds is not confirmed.' }),
  },
  {
    what: 'relief-valves-out',
    sentence: 'Relief valves are out or blinded for the test.',
    why: 'They lift below the test pressure and are spoilt by it.',
    remedy: 'Take the relief valves out.',
    clearedBy: ['inspector', 'operations'],
    test: ({ reliefValvesOut }) => (reliefValvesOut ? null : { detail: 'Relief valves are not out.' }),
  },
  {
    what: 'metal-temperature',
    sentence: 'The metal is warm enough for the test.',
    why: 'Cold steel breaks without warning.',
    remedy: 'Warm the metal or the medium.',
    clearedBy: ['inspector'],
    test: ({ metalTemperature_C }, { settings }) =>
      metalTemperature_C < settings.leastMetalTemperature_C
        ? {
            detail: `The metal is at ${metalTemperature_C} °C.`,
            limit: `${settings.leastMetalTemperature_C} °C`,
          }
        : null,
  },
  {
    what: 'gauges-calibrated',
    sentence: 'The test gauges are in calibration.',
    why: 'The gauge is the only witness of the pressure.',
    remedy: 'Fit calibrated gauges and name them.',
    clearedBy: ['inspector'],
    test: ({ gaugeIds }, context) => {
      if (gaugeIds.length === 0) return { detail: 'No gauge is named.', limit: 'at least one' };
      const off = gaugeIds.flatMap((id) => notCalibrated(context.tools[id], context) ?? []);
      return off.length === 0 ? null : { detail: `Not in calibration: ${list(off)}.` };
    },
  },
];
