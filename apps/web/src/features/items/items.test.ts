import { expect, test } from 'vitest';
import { itemsAt } from './items-page.tsx';

const item = (tag: string, whereabouts: string) => ({
  itemId: tag,
  tag,
  kind: 'valve',
  description: null,
  whereabouts,
  joints: [],
});

test('away is what must come back: not what is in line, and not what was scrapped', () => {
  const rows = [
    item('FV-1', 'in-line'),
    item('FV-2', 'at-the-joint'),
    item('PSV-3', 'workshop'),
    item('SP-4', 'store'),
    item('SP-5', 'scrapped'),
  ];
  const tags = (filter: Parameters<typeof itemsAt>[1]) => itemsAt(rows, filter).map((row) => row.tag);
  expect(tags('away')).toEqual(['FV-2', 'PSV-3', 'SP-4']);
  expect(tags('workshop')).toEqual(['PSV-3']);
  expect(tags('any')).toHaveLength(5);
});
