import type { Question, Reading } from '../../src/register-reading/reading.ts';

/** The value of a reading; fails with its refusal or question where there is none. */
export function valueRead<T>(reading: Reading<T>): T {
  if (reading.ok === true) return reading.value;
  throw new Error(reading.ok === false ? `${reading.code}: ${reading.message}` : `asked: ${reading.ask.question}`);
}

/** The code of a refusal; fails where the cell could be read or is asked. */
export function codeOf<T>(reading: Reading<T>): string {
  if (reading.ok === false) return reading.code;
  throw new Error(`not refused: ${JSON.stringify(reading)}`);
}

/** The question that a reading asks; fails where it was read or refused. */
export function questionOf<T>(reading: Reading<T>): Question {
  if (reading.ok === undefined) return reading.ask;
  throw new Error(`not asked: ${JSON.stringify(reading)}`);
}
