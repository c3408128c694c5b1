import type { TodayAnswer } from '@seatwell/contract';
import type { Reading } from '../reading/reading.ts';
import type { RoleHolders } from '../reading/role-holders.ts';
import { waitCounts } from '../reading/waits-now.ts';

type SignOff = TodayAnswer['signOffs'][number];

const SIGN_OFFS: readonly string[] = [
  'review',
  'hold',
  'procedure',
  'target',
  'release',
  'check',
  'witness',
  'proof',
  'hand-over',
];

/** Decisions that joints wait for, by role, in the order of work. */
export async function waitingSignOffs(reading: Reading, holders: RoleHolders): Promise<SignOff[]> {
  const sums = new Map<string, SignOff>();
  for (const { waitsFor, by, count } of await waitCounts(reading)) {
    if (!SIGN_OFFS.includes(waitsFor)) continue;
    const key = `${waitsFor} ${by}`;
    const known = sums.get(key) ?? { waitsFor, role: by, count: 0, persons: holders.of(by) };
    sums.set(key, { ...known, count: known.count + count });
  }
  return [...sums.values()].sort(
    (a, b) => SIGN_OFFS.indexOf(a.waitsFor) - SIGN_OFFS.indexOf(b.waitsFor) || b.count - a.count,
  );
}
