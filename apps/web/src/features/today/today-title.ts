import type { TodayAnswer } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';

/** Packs that wait for nothing but a signature: the release, or the declaration that their joints are proven. */
export function packsWaitingForSignature({ packs }: Pick<TodayAnswer, 'packs'>): number {
  return packs.rows.filter(
    ({ stopper, more }) =>
      more === 0 && (stopper.code === 'release-not-signed' || stopper.code === 'joints-not-proven'),
  ).length;
}

/** The state of the shutdown in one sentence: leaks, flanges part tight, packs that wait for a signature. */
export function useTodayTitle(today: TodayAnswer): string {
  const text = useText('today');
  const format = useFormat();
  const leaking = today.leaking;
  const partTight = today.partTight.length;
  const packs = packsWaitingForSignature(today);
  const clauses = [
    leaking > 0 ? text('title-leaking', { count: leaking, shown: format.count(leaking) }) : '',
    partTight > 0
      ? text('title-part-tight', { count: partTight, shown: format.count(partTight) })
      : text('title-no-part-tight'),
    packs > 0 ? text('title-packs', { count: packs, shown: format.count(packs) }) : '',
  ].filter(Boolean);
  return clauses.reduce((first, second) => text('title-and', { first, second }));
}
