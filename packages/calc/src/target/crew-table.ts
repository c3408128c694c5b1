import { findNut } from '../bolting/nuts.ts';
import { POSITIVE, requireInRange } from '../checks.ts';
import { findFlange } from '../flanges/find-flange.ts';
import { CalcRefusal } from '../refusal.ts';
import { areasOf } from '../threads/geometry.ts';
import { type Lubricant, torqueModelOf } from '../torque/friction.ts';
import { torqueFromLoad } from '../torque/torque.ts';
import type { TighteningMethod } from './methods.ts';

/** An approved bolt stress of one size and rating. */
export interface ApprovedStress {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  readonly boltStress_MPa: number;
}

/** A row as crews use it: bolts, socket, set value per pass; or why it cannot be printed. */
export type CrewTableRow = Pick<ApprovedStress, 'standard' | 'size' | 'rating'> &
  (
    | {
        readonly boltCount: number;
        readonly boltThread: string;
        readonly acrossFlats_mm?: number;
        readonly boltStress_MPa: number;
        readonly boltLoad_N: number;
        readonly passes: readonly {
          readonly percent: number;
          readonly load_N: number;
          /** Where the nut is turned under load. */
          readonly torque_Nm?: number;
        }[];
      }
    | { readonly refused: string }
  );

/**
 * Approved bolt stresses as the table that crews use. A torque depends on stress, area, thread and lubricant alone, so
 * nothing is decided anew here.
 *
 * @param input.area area that the approved stresses stand on
 * @param input.passPercents of the procedure, rising to 100
 * @throws CalcRefusal `out-of-range` for a percent or stress that is none
 */
export function crewTable(input: {
  readonly rows: readonly ApprovedStress[];
  readonly area: 'tensile' | 'root';
  readonly method: TighteningMethod;
  readonly lubricant: Lubricant;
  readonly passPercents: readonly number[];
}): readonly CrewTableRow[] {
  requireInRange([
    ...input.passPercents.map(
      (percent, i) => [`passPercents.${i}`, percent, { min: 0, max: 100, open: true }] as const,
    ),
    ...input.rows.map((row, i) => [`rows.${i}.boltStress_MPa`, row.boltStress_MPa, POSITIVE] as const),
  ]);
  return input.rows.map(({ standard, size, rating, boltStress_MPa }): CrewTableRow => {
    const key = { standard, size, rating };
    try {
      const { boltCount, boltThread, boltHole_mm } = findFlange(key);
      const areas = areasOf(boltThread);
      const boltLoad_N = boltStress_MPa * (input.area === 'root' ? areas.rootArea_mm2 : areas.tensileStressArea_mm2);
      const model = torqueModelOf(input.lubricant, boltThread, { hole_mm: boltHole_mm });
      const acrossFlats_mm = findNut({ thread: boltThread })?.acrossFlats_mm;
      const turned = input.method === 'torque-wrench' || input.method === 'hydraulic-wrench';
      return {
        ...key,
        boltCount,
        boltThread,
        ...(acrossFlats_mm === undefined ? {} : { acrossFlats_mm }),
        boltStress_MPa,
        boltLoad_N,
        passes: input.passPercents.map((percent) => {
          const load_N = (boltLoad_N * percent) / 100;
          if (!turned) return { percent, load_N };
          const { torque_Nm } = torqueFromLoad({ thread: boltThread, load_N, ...model });
          return { percent, load_N, torque_Nm };
        }),
      };
    } catch (error) {
      if (error instanceof CalcRefusal) return { ...key, refused: error.message };
      throw error;
    }
  });
}
