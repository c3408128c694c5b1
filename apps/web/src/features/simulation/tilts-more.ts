// A gasket pinched to twice the difference that it has in the usual way is another gasket (our own rule).
const MUCH_MORE = 2;

/** Whether a plan tilts the flange so much more on its way than the usual passes that it must be said. */
export const tiltsMore = (tilt_mm: number | undefined, usual_mm: number): boolean =>
  tilt_mm !== undefined && tilt_mm > MUCH_MORE * usual_mm;
