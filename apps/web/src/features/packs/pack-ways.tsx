import { addresses } from '../../app/addresses.ts';
import { PageWays } from '../../app/page-ways.tsx';
import { useText } from '../../texts/text-provider.tsx';

/** Packs and what is settled beside them. */
export function PackWays({ shutdownId }: { shutdownId: string }) {
  const text = useText('packs');
  return (
    <PageWays
      label={text('ways')}
      ways={[
        { href: addresses.packs(shutdownId), label: text('packs') },
        { href: addresses.systems(shutdownId), label: text('systems') },
        { href: addresses.punchItems(shutdownId), label: text('punch-items') },
        { href: addresses.permits(shutdownId), label: text('permits') },
      ]}
    />
  );
}
