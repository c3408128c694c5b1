import type { AreaRef, CrewRef, PackRef, Reach } from '@seatwell/contract';
import { useMe } from '../../app/session.ts';
import { useText } from '../../texts/text-provider.tsx';

interface Names {
  readonly areas: readonly AreaRef[];
  readonly crews: readonly CrewRef[];
  readonly packs: readonly PackRef[];
}

/** A reach in words; what belongs to another shutdown than the one in sight is told by its kind. */
export function useReachWords(names: Names | undefined): (reach: Reach) => string {
  const text = useText('people');
  const { shutdowns } = useMe();
  return (reach) => {
    if (reach.kind === 'site' || reach.kind === 'own-assignments') return text(`reach-${reach.kind}`);
    const name =
      reach.kind === 'shutdown'
        ? shutdowns.find((each) => each.shutdownId === reach.id)?.name
        : reach.kind === 'area'
          ? names?.areas.find((each) => each.areaId === reach.id)?.name
          : reach.kind === 'pack'
            ? names?.packs.find((each) => each.packId === reach.id)?.number
            : names?.crews.find((each) => each.crewId === reach.id)?.code;
    return name === undefined ? text(`reach-${reach.kind}`) : text(`reach-${reach.kind}-of`, { name });
  };
}
