import { ask, type Cell, type Choice, plainSigns, quoted, type Reading, read, refuse } from './reading.ts';

export type DateOrder = 'dmy' | 'mdy' | 'ymd';

const months = [
  'jan',
  'feb|fev|fév',
  'mar|mär|maer|mrz',
  'apr|avr|abr',
  'may|mai|mei|mayo',
  'jun|juin',
  'jul|juil',
  'aug|aou|aoû|ago',
  'sep|set',
  'oct|okt|out',
  'nov',
  'dec|dez|déc|dic',
].map((names) => new RegExp(`^(?:${names})`, 'i'));

const orderNames: Readonly<Record<DateOrder, string>> = {
  dmy: 'day, month, year',
  mdy: 'month, day, year',
  ymd: 'year, month, day',
};

/** The years in which the work of a register can lie. */
const firstYear = 1990;
const lastYear = 2099;

function isoDate(year: number, month: number, day: number): string | undefined {
  if (year < firstYear || year > lastYear || month < 1 || month > 12 || day < 1) return undefined;
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 ? date.toISOString().slice(0, 10) : undefined;
}

const century = (text: string) => (text.length <= 2 ? 2000 + Number(text) : Number(text));

function inOrder(parts: readonly [string, string, string], order: DateOrder): string | undefined {
  const [first, second, third] = parts;
  const [year, month, day] =
    order === 'ymd' ? [first, second, third] : order === 'dmy' ? [third, second, first] : [third, first, second];
  if (day.length > 2 || month.length > 2 || year.length === 3) return undefined;
  return isoDate(century(year), Number(month), Number(day));
}

function plausibleOrders(text: string, parts: readonly [string, string, string]): readonly DateOrder[] {
  if (parts[0].length === 4) return ['ymd'];
  // Dates with dots are written day first; with dashes and a short year the year may come first.
  if (text.includes('.')) return ['dmy'];
  return text.includes('-') && parts[2].length === 2 ? ['dmy', 'mdy', 'ymd'] : ['dmy', 'mdy'];
}

/** Every order in which a numeric date text gives a date, with that date. */
export function dateReadings(cell: Cell): ReadonlyMap<DateOrder, string> {
  const readings = new Map<DateOrder, string>();
  if (typeof cell !== 'string') return readings;
  const text = plainSigns(cell).replace(/[ T]\d{1,2}:\d{2}.*$/, '');
  const match = /^(\d{1,4})\s*([./-])\s*(\d{1,2})\s*\2\s*(\d{1,4})$/.exec(text);
  if (!match) return readings;
  const parts = [match[1]!, match[3]!, match[4]!] as const;
  for (const order of plausibleOrders(text, parts)) {
    const date = inOrder(parts, order);
    if (date !== undefined) readings.set(order, date);
  }
  return readings;
}

function withMonthName(text: string): string | undefined {
  const dayFirst =
    /^(?:\p{L}+,? )?(\d{1,2})(?:st|nd|rd|th)?[ .-]+(?:de |of )?(\p{L}{3,})\.?[ ,.-]+(\d{4}|\d{2})$/iu.exec(text);
  const monthFirst = /^(?:\p{L}+,? )?(\p{L}{3,})\.?[ -]+(\d{1,2})(?:st|nd|rd|th)?[ ,-]+(\d{4}|\d{2})$/iu.exec(text);
  const [day, name, year] = dayFirst
    ? [dayFirst[1], dayFirst[2], dayFirst[3]]
    : [monthFirst?.[2], monthFirst?.[1], monthFirst?.[3]];
  if (day === undefined || name === undefined || year === undefined) return undefined;
  const month = months.findIndex((pattern) => pattern.test(name)) + 1;
  return month === 0 ? undefined : isoDate(century(year), month, Number(day));
}

/** Day count of sheets with the 1900 date system; day 60 never existed, later ones are right. */
function fromSerial(serial: number): string | undefined {
  const date = new Date(Date.UTC(1899, 11, 30) + Math.floor(serial + 1e-6) * 86_400_000);
  return Number.isNaN(date.getTime())
    ? undefined
    : isoDate(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate());
}

/**
 * Reads a date as `YYYY-MM-DD`: the sheet's own date cells and day counts, ISO dates, dates with the month's name,
 * and numeric dates. A numeric date with more than one order is asked (`date-order`) unless the order is given.
 *
 * @param cell the cell
 * @param order the order of numeric dates in this column, where known
 */
export function parseDate(cell: Cell, order?: DateOrder): Reading<string> {
  const date = singleReading(cell);
  if (date !== undefined) return read(date);
  const readings = dateReadings(cell);
  const chosen = order === undefined ? undefined : readings.get(order);
  if (chosen !== undefined) return read(chosen);
  const distinct = new Set(readings.values());
  if (distinct.size === 1 && (order === undefined || readings.has('ymd'))) return read([...distinct][0]!);
  if (distinct.size > 1 && order === undefined) {
    const choices: Choice[] = [...readings].map(([value, iso]) => ({
      value,
      label: `${orderNames[value]}: ${iso}`,
    }));
    return ask(
      'date-order',
      `In which order are the dates of this column written? ${quoted(cell)} can be more than one date.`,
      choices,
    );
  }
  if (distinct.size > 0 && order !== undefined) {
    return refuse(
      'date-not-in-order',
      `${quoted(cell)} is no date in the order ${orderNames[order]}. Correct the date, or write it as YYYY-MM-DD.`,
    );
  }
  return refuse(
    'date-unreadable',
    `${quoted(cell)} cannot be read as a date from ${firstYear} to ${lastYear}. Write it as YYYY-MM-DD.`,
  );
}

function singleReading(cell: Cell): string | undefined {
  if (cell instanceof Date) {
    // Sheets hold times as fractions of a day: half a second makes good for their rounding.
    const rounded = new Date(cell.getTime() + 500);
    if (Number.isNaN(rounded.getTime())) return undefined;
    return isoDate(rounded.getUTCFullYear(), rounded.getUTCMonth() + 1, rounded.getUTCDate());
  }
  if (typeof cell === 'number') return fromSerial(cell);
  const text = plainSigns(cell);
  if (/^\d{5}$/.test(text)) return fromSerial(Number(text));
  const compact = /^((?:19|20)\d{2})(\d{2})(\d{2})$/.exec(text);
  if (compact) return isoDate(Number(compact[1]), Number(compact[2]), Number(compact[3]));
  return withMonthName(text.replace(/ \d{1,2}:\d{2}.*$/, ''));
}
