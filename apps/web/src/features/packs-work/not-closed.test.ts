import { describe, expect, test } from 'vitest';
import { isClosed, type PackMember, underPressure } from './not-closed.ts';

const member = (more: object): PackMember =>
  ({ role: 'inside', cancelled: false, stage: 'checked', waitsFor: { code: 'proof' }, ...more }) as PackMember;

describe('the joints of a pack under pressure', () => {
  test('are those inside and at the boundary; what is reinstated afterwards or cancelled is not', () => {
    const members = [
      member({ role: 'inside' }),
      member({ role: 'boundary' }),
      member({ role: 'reinstated' }),
      member({ cancelled: true }),
    ];
    expect(underPressure({ members })).toHaveLength(2);
  });

  test.each(['open', 'nipped-up', 'part-tight', 'released'])('%s holds no pressure', (stage) => {
    expect(isClosed(member({ stage }))).toBe(false);
  });

  test('tight holds, and so does a joint that is only tested', () => {
    expect(isClosed(member({ stage: 'tight', waitsFor: { code: 'check' } }))).toBe(true);
    expect(isClosed(member({ stage: 'planned' }))).toBe(true);
    expect(isClosed(member({ stage: 'planned', waitsFor: { code: 'procedure' } }))).toBe(false);
  });
});
