/** Most stations of a joint: their indexes are kept in 16 bits. */
export const MOST_STATIONS = 0xffff;

/**
 * A station index, or a count of stations, as it is. To the compiler it says how large the number can be, so that
 * nothing computed from it as an index needs a check for overflow: a tenth of the time of a simulation.
 */
export function small(station: number): number {
  return station & MOST_STATIONS;
}
