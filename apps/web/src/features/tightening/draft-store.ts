import { noTaps, type Taps } from './draft.ts';

const keyOf = (makeId: string) => `seatwell.tightening.${makeId}`;

/** The taps that this device keeps of a make: they survive a reload, a flat battery and a closed tab. */
export function readTaps(makeId: string): Taps {
  try {
    const kept = localStorage.getItem(keyOf(makeId));
    const taps = kept === null ? noTaps : (JSON.parse(kept) as Taps);
    return taps.v === 2 ? taps : noTaps;
  } catch {
    return noTaps;
  }
}

/** @returns whether they could be kept: where storage is off, the screen says so */
export function writeTaps(makeId: string, taps: Taps): boolean {
  try {
    const blank = taps.running === null && taps.lastTools === null;
    if (blank) localStorage.removeItem(keyOf(makeId));
    else localStorage.setItem(keyOf(makeId), JSON.stringify(taps));
    return true;
  } catch {
    return false;
  }
}
