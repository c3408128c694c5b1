import type { PackSummary, Role, Stopper, WhoAnswer } from '@seatwell/contract';
import { crewRefOf, type Places } from '../reading/places.ts';
import type { RoleHolders, Where } from '../reading/role-holders.ts';
import type { PackCounts, Some } from './pack-facts.ts';

export interface PackAtHand {
  readonly released: boolean;
  /** a reading reached the pack's pressure for its time */
  readonly held: boolean;
  readonly pressure_MPa: number;
  readonly hold_min: number;
}

/** What stands between a pack and its proof, in the order of work; each with who moves it on. */
export function stoppersOf(
  pack: PackAtHand,
  counts: PackCounts,
  places: Places,
  holders: RoleHolders,
  where: Where,
): Stopper[] {
  const byRole = (role: Role): WhoAnswer => ({ role, persons: holders.of(role, where), crew: null });
  const byCrew = (some: Some): WhoAnswer => {
    const role = (some.by ?? 'technician') as Role;
    return { role, persons: holders.of(role, where), crew: crewRefOf(places, some.crewId) };
  };
  const of = counts.tested;
  const joints = (code: string, some: Some, who: (some: Some) => WhoAnswer): Stopper[] =>
    some.count > 0 ? [{ code, data: { count: some.count, of, tag: some.tag }, who: who(some) }] : [];
  if (of === 0) return [{ code: 'no-joints', data: {}, who: byRole('coordinator') }];
  return [
    ...joints('joints-leaking', counts.leaking, byCrew),
    ...joints('joints-not-tight', counts.notTight, byCrew),
    ...joints('joints-rejected', counts.rejected, byCrew),
    ...joints('relaxation-due', counts.relaxationDue, (some) => byCrew({ ...some, by: 'technician' })),
    ...joints('joints-not-checked', counts.notChecked, byCrew),
    ...(counts.unclosedA.count > 0
      ? [{ code: 'punch-a-open', data: { ...counts.unclosedA }, who: byRole('inspector') }]
      : []),
    ...joints('provisional-tools', counts.provisional, () => byRole('inspector')),
    ...(pack.released ? [] : [{ code: 'release-not-signed', data: {}, who: byRole('inspector') }]),
    ...(pack.released && !pack.held
      ? [
          {
            code: 'readings-missing',
            data: { pressure_MPa: pack.pressure_MPa, hold_min: pack.hold_min },
            who: byRole('inspector'),
          },
        ]
      : []),
    ...(pack.held ? joints('joints-not-proven', counts.notProven, () => byRole('inspector')) : []),
  ];
}

/** Where a pack stands on its way to its proof. */
export function packState(pack: PackAtHand, counts: PackCounts, stoppers: readonly Stopper[]): PackSummary['state'] {
  if (counts.tested > 0 && counts.notProven.count === 0) return 'proven';
  if (pack.released) return pack.held ? 'held' : 'released';
  return stoppers.every((stopper) => stopper.code === 'release-not-signed') ? 'ready' : 'planned';
}
