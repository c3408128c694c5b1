import { CalcRefusal, findFlange } from '@seatwell/calc';
import type { FlangeAnswer } from '@seatwell/workflow';

/** The flanges of the calculation as the reading of a register asks for them. */
export function lookupFlange(standard: string, size: string, rating: string, boltCount?: number): FlangeAnswer {
  try {
    const flange = findFlange(
      boltCount === undefined ? { standard, size, rating } : { standard, size, rating, boltCount },
    );
    return { found: true, boltCount: flange.boltCount, boltThread: flange.boltThread };
  } catch (error) {
    if (!(error instanceof CalcRefusal)) throw error;
    return { found: false, code: error.code, message: error.message };
  }
}
