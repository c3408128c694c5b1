import { CalcRefusal, findFlange, findGasketDimensions, listFlangeRatings, listFlangeSizes } from '@seatwell/calc';
import type { Said } from '@seatwell/contract';
import type { JointDraft } from './joint-draft.ts';

/** What the standard says of a flange; `asks` = it leaves the count of bolts open. */
export type StandardFlange =
  | { readonly boltCount: number; readonly thread: string; readonly notes: readonly Said[] }
  | { readonly asks: readonly number[]; readonly notes: readonly Said[] }
  | { readonly refused: readonly Said[] };

/** Looks the flange up by its keys; undefined while they are not complete. */
export function standardFlange(draft: JointDraft): StandardFlange | undefined {
  const { standard, size, rating } = draft;
  if (standard === 'custom' || size === '' || rating === '') return undefined;
  const lookUp = (boltCount?: number) =>
    findFlange({ standard, size, rating, ...(boltCount === undefined ? {} : { boltCount }) });
  try {
    const flange = lookUp();
    return {
      boltCount: flange.boltCount,
      thread: flange.boltThread,
      notes: flange.warnings,
    };
  } catch (error) {
    if (!(error instanceof CalcRefusal)) throw error;
    const [first] = error.errors;
    if (first?.code !== 'bolt-count-must-be-given') return { refused: error.errors };
    if (draft.boltCount === 4 || draft.boltCount === 8) {
      const flange = lookUp(draft.boltCount);
      return { boltCount: flange.boltCount, thread: flange.boltThread, notes: [] };
    }
    return { asks: [4, 8], notes: error.errors };
  }
}

export const sizesOf = (standard: string): readonly string[] =>
  standard === 'custom' ? [] : listFlangeSizes(standard);

export const ratingsOf = (standard: string, size: string): readonly string[] =>
  standard === 'custom' ? [] : listFlangeRatings(standard, size === '' ? undefined : size);

/** The contact ring of the standard gasket; undefined where the tables have none. */
export function standardGasket(draft: JointDraft): ReturnType<typeof findGasketDimensions> {
  const { standard, size, rating, family } = draft;
  if (family === '' || size === '' || rating === '') return undefined;
  try {
    return findGasketDimensions({ standard, size, rating, family });
  } catch {
    return undefined;
  }
}
