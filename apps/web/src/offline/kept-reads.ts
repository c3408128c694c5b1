/** Header of an answer that comes from this device: when it was read from the server. */
export const keptHeader = 'x-seatwell-read-at';

/** Cache of the app's own files, by build. */
export const SHELL = 'seatwell-shell';
/** Cache of what the person who is signed in has read. */
export const READS = 'seatwell-reads';

const SHUTDOWN = '/api/v1/shutdowns/[^/]+';
const KEPT = new RegExp(
  `^(?:/api/v1/(?:session|tools|procedures)|${SHUTDOWN}/(?:shutdown|choices|crews|my-joints|today|blinds|permits|talks|packs(?:/[^/]+)?|joints/[^/]+(?:/sheet\\.pdf)?))$`,
);

/** Whether the last answer of a read is kept for the time without signal: what a crew works with, and no lists of thousands. */
export const isKept = (pathname: string): boolean => KEPT.test(pathname);
