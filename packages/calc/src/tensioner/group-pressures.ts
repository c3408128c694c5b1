import { refuse } from '../refusal.ts';
import { MOST_LOAD_PERCENT } from '../simulation/sequence-steps.ts';
import { simulateTightening } from '../simulation/simulate.ts';
import {
  type RingJointRequest,
  ringJoint,
  type StandardJointRequest,
  standardJoint,
} from '../simulation/standard-joint.ts';
import type { Warning } from '../working.ts';

/** Corrections of the group loads; each removes most of what is left. */
const CORRECTIONS = 8;

const GROUPS: Readonly<Record<number, number>> = { 1: 1, 0.5: 2, 0.33: 3, 0.25: 4 };

/** Every n-th bolt from the first of the group: the tools of a group stay equally spaced. */
function everyNth(boltCount: number, count: number): readonly (readonly number[])[] {
  return Array.from({ length: count }, (_, group) =>
    Array.from({ length: boltCount / count }, (_, i) => group + 1 + i * count),
  );
}

/**
 * The bolts of each tensioning group, in clockwise places from 1.
 *
 * @param coverage 1, 0.5, 0.33 or 0.25: one to four groups of equally spaced bolts
 * @throws CalcRefusal `coverage-does-not-fit`
 */
export function tensioningGroups(boltCount: number, coverage: number): readonly (readonly number[])[] {
  const count = GROUPS[coverage] ?? Number.NaN;
  if (!Number.isInteger(boltCount / count)) {
    refuse(
      'coverage',
      'coverage-does-not-fit',
      `${boltCount} bolts do not make ${count} equal groups. Choose another coverage.`,
    );
  }
  return everyNth(boltCount, count);
}

/**
 * Loads of the tensioning groups, percent of the load that is to remain, so that all bolts end alike.
 *
 * Source: the tightening simulation; no published number exists for coverage below 100 %.
 * @param input.coverage 1, 0.5, 0.33 or 0.25: one to four groups of equally spaced bolts, each tensioned once
 * in every pass
 * @param input.passPercents shares of the load that the passes go up by, ending at 100; one pass if not given
 * @throws CalcRefusal `coverage-does-not-fit`, `group-load-out-of-reach`, and those of the simulation
 */
export function tensionerGroupLoads(input: {
  readonly joint: StandardJointRequest | RingJointRequest;
  readonly residualLoad_N: number;
  readonly coverage: number;
  readonly passPercents?: readonly number[];
}): { readonly percents: readonly number[]; readonly warnings: readonly Warning[] } {
  const prepared = 'equivalentRing' in input.joint ? ringJoint(input.joint) : standardJoint(input.joint);
  const groups = tensioningGroups(prepared.joint.boltCount, input.coverage);
  const passPercents = input.passPercents ?? [100];
  let percents = groups.map(() => 100);
  for (let correction = 0; correction < CORRECTIONS; correction++) {
    const passes = passPercents.map((share) => ({
      steps: groups.map((bolts, group) => ({ bolts, load_percent: ((percents[group] ?? 100) * share) / 100 })),
    }));
    const simulated = simulateTightening({
      joint: prepared.joint,
      target_N: input.residualLoad_N,
      passes,
    });
    const ended = simulated.steps.at(-1)?.loads_percent ?? [];
    percents = percents.map((percent, group) => {
      const bolts = groups[group] ?? [];
      const mean = bolts.reduce((sum, bolt) => sum + (ended[bolt - 1] ?? Number.NaN), 0) / bolts.length;
      return percent + (100 - mean);
    });
    const highest = Math.max(...percents);
    if (!(highest <= MOST_LOAD_PERCENT)) {
      refuse(
        'coverage',
        'group-load-out-of-reach',
        `A group would need ${highest.toFixed(0)} % of the load that is to remain. Use more coverage or more passes.`,
        MOST_LOAD_PERCENT,
      );
    }
  }
  return { percents, warnings: prepared.warnings };
}
