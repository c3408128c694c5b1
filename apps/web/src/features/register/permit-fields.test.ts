import { describe, expect, test } from 'vitest';
import { emptyPermit, permitValidity } from './permit-fields.tsx';

describe('the times of a permit', () => {
  const now = new Date('2026-11-25T05:30:20Z');

  test('are those of the site, wherever the device is', () => {
    const permit = emptyPermit('Europe/Oslo', now);
    expect(permit.from).toBe('2026-11-25T06:30');
    expect(permit.until).toBe('2026-11-25T18:30');
  });

  test.each(['Europe/Oslo', 'Asia/Kolkata', 'America/St_Johns', 'UTC'])('become instants again in %s', (zone) => {
    expect(permitValidity(emptyPermit(zone, now), zone)).toEqual({
      validFrom: '2026-11-25T05:30:00.000Z',
      validUntil: '2026-11-25T17:30:00.000Z',
    });
  });
});
