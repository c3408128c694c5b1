/** The record writes instants as ISO 8601 in UTC, in the middle of what it says. */
const INSTANT = /\d{4}-\d\d-\d\dT[\d:.]+Z/g;

/** What the record says, with its instants as the screen writes them. */
export const instantsIn = (said: string, time: (instant: string) => string): string =>
  said.replaceAll(INSTANT, (instant) => time(instant));
