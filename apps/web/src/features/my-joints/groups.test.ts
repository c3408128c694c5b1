import type { MyJointRow } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { groupMine, searchMine } from './groups.ts';

const row = (tag: string, can: MyJointRow['can'], code: string, data = {}): MyJointRow =>
  ({
    tag,
    can,
    line: '8"-HC-4101',
    location: 'pipe rack',
    item: null,
    waitsFor: { code, by: null, data },
  }) as MyJointRow;

const rows = [
  row('U41-P1-1', 'part-tight', 'pass'),
  row('U41-P1-2', 'now', 'opening'),
  row('U41-P1-3', 'now', 'release'),
  row('U41-P1-4', 'now', 'check', { level: 'every' }),
  row('U41-P1-5', 'now', 'check', { level: 'self' }),
  row('U41-P1-6', 'waiting', 'target'),
];

describe('my joints', () => {
  test('part tight apart, then what waits for a signature, what can be worked on, and what waits', () => {
    const groups = groupMine(rows);
    const tags = (list: readonly MyJointRow[]) => list.map((each) => each.tag);
    expect(tags(groups.partTight)).toEqual(['U41-P1-1']);
    expect([...groups.toSign].map(([kind, list]) => [kind, tags(list)])).toEqual([
      ['release', ['U41-P1-3']],
      ['check', ['U41-P1-4']],
    ]);
    // The crew's own check is work at the joint, not a list to sign.
    expect(tags(groups.now)).toEqual(['U41-P1-2', 'U41-P1-5']);
    expect(tags(groups.waiting)).toEqual(['U41-P1-6']);
  });

  test('a tag is found however it is typed or scanned', () => {
    expect(searchMine(rows, 'u41p1 4').map((each) => each.tag)).toEqual(['U41-P1-4']);
    expect(searchMine(rows, 'pipe rack')).toHaveLength(6);
    expect(searchMine(rows, '')).toHaveLength(6);
    expect(searchMine(rows, 'U99')).toEqual([]);
  });
});
