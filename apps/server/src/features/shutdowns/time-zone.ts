import { Problem } from '../../platform/errors/problem.ts';

/** @throws Problem `bad-input` for a zone that the machine's time zone data does not know */
export function refuseUnknownTimeZone(timeZone: string): void {
  try {
    new Intl.DateTimeFormat('en', { timeZone });
  } catch {
    throw new Problem('bad-input', `“${timeZone}” is no known time zone. Use a name such as Europe/Oslo.`, [
      { path: 'payload.timeZone', code: 'unknown-time-zone', message: 'Use a name of the IANA time zone database.' },
    ]);
  }
}
