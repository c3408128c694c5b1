/** A count of joints at the end of a day. */
export interface DayCount {
  /** calendar day at the site, 2027-03-26 */
  readonly day: string;
  readonly count: number;
}

/** Joints tight day by day, and the plan of them. */
export interface ProgressCurve {
  readonly plan: readonly DayCount[];
  readonly actual: readonly DayCount[];
}

/** Where the shutdown stands against its plan today, counted in joints tight. */
export interface Standing {
  readonly actual: number;
  readonly planned: number;
  /** above 0: ahead of the plan */
  readonly ahead: number;
}

/** Actual and planned count at the end of the last day that has an actual count; undefined before the first. */
export function standing({ plan, actual }: ProgressCurve): Standing | undefined {
  const last = actual.at(-1);
  if (!last) return undefined;
  const planned = plan.filter((point) => point.day <= last.day).at(-1)?.count ?? 0;
  return { actual: last.count, planned, ahead: last.count - planned };
}

export interface Finish {
  /** joints made tight a day, mean of the days looked at */
  readonly perDay: number;
  readonly days: number;
  readonly left: number;
  /** the day on which the last joint would be tight */
  readonly on: string;
  /** in eight of ten shutdowns whose days vary as these did, the finish lies from this day … */
  readonly earliest: string;
  /** … to this one; null where the days vary too much to name a last day */
  readonly latest: string | null;
}

// Fewer whole days say nothing about a pace; more than a week of them are of another shutdown.
const LEAST_DAYS = 3;
const MOST_DAYS = 7;

/**
 * Student's t, 90 % quantile by degrees of freedom (2 to 6), for an interval that holds eight of ten:
 * NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.2 (from memory; the test computes them anew).
 */
export const T_90: Readonly<Record<number, number>> = { 2: 1.886, 3: 1.638, 4: 1.533, 5: 1.476, 6: 1.44 };

/** What is further away is no forecast any more. */
const HORIZON_DAYS = 3650;

/**
 * When the last joint would be tight if the pace of the last whole days went on, and how far the day is uncertain:
 * prediction interval of the sum of n further days from k days with mean m and standard deviation s,
 * n·m ± t·s·√(n + n²/k) (Hahn and Meeker, Statistical Intervals, 1991, section 4.4; from memory).
 * No forecast of anything else: it knows neither what is left to find nor what holds the work up.
 * @param total joints of the shutdown
 * @param today the running day: it is not over and does not count into the pace
 * @returns undefined where there are too few days, nothing was tightened in them, or nothing is left
 */
export function finishAtPace(
  { actual }: Pick<ProgressCurve, 'actual'>,
  total: number,
  today: string,
): Finish | undefined {
  const whole = actual.filter((point) => point.day < today).slice(-1 - MOST_DAYS);
  const perDays = whole.slice(1).map((point, index) => point.count - (whole[index]?.count ?? 0));
  const days = perDays.length;
  const left = total - (actual.at(-1)?.count ?? 0);
  const perDay = perDays.reduce((sum, each) => sum + each, 0) / days;
  if (left <= 0 || days < LEAST_DAYS || !(perDay > 0)) return undefined;
  const deviation = Math.sqrt(perDays.reduce((sum, each) => sum + (each - perDay) ** 2, 0) / (days - 1));
  const reach = (n: number) => (T_90[days - 1] as number) * deviation * Math.sqrt(n + n ** 2 / days);
  const earliest = firstDay((n) => n * perDay + reach(n) >= left);
  const latest = firstDay((n) => n * perDay - reach(n) >= left);
  return {
    perDay,
    days,
    left,
    on: dayAfter(today, Math.ceil(left / perDay)),
    earliest: dayAfter(today, earliest ?? 1),
    latest: latest === null ? null : dayAfter(today, latest),
  };
}

function firstDay(isDone: (days: number) => boolean): number | null {
  for (let n = 1; n <= HORIZON_DAYS; n++) if (isDone(n)) return n;
  return null;
}

function dayAfter(day: string, days: number): string {
  const at = new Date(`${day}T12:00:00Z`);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}
