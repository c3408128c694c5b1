import type { PackSummary, TodayAnswer } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';

/** Packs that wait for nothing but a signature: the release, or the declaration that their joints are proven. */
export function packsWaitingForSignature(packs: readonly PackSummary[]): readonly PackSummary[] {
  return packs.filter(({ stoppers: [first, ...more] }) => {
    const waits = first?.code === 'release-not-signed' || first?.code === 'joints-not-proven';
    return waits && more.length === 0;
  });
}

/** The state of the shutdown in one sentence: leaks, flanges part tight, packs that wait for a signature. */
export function useTodayTitle(today: TodayAnswer, allPacks: readonly PackSummary[]): string {
  const text = useText('today');
  const format = useFormat();
  const leaking = today.leaking;
  const partTight = today.partTight.length;
  const packs = packsWaitingForSignature(allPacks).length;
  const clauses = [
    leaking > 0 ? text('title-leaking', { count: leaking, shown: format.count(leaking) }) : '',
    partTight > 0
      ? text('title-part-tight', { count: partTight, shown: format.count(partTight) })
      : text('title-no-part-tight'),
    packs > 0 ? text('title-packs', { count: packs, shown: format.count(packs) }) : '',
  ].filter(Boolean);
  return clauses.reduce((first, second) => text('title-and', { first, second }));
}
