import { addresses } from '../../app/addresses.ts';
import { PageWays } from '../../app/page-ways.tsx';
import { useText } from '../../texts/text-provider.tsx';

/** Blinds, and beside them the items that joints hold: both have to be back before start-up. */
export function BlindWays({ shutdownId }: { shutdownId: string }) {
  const text = useText('items');
  return (
    <PageWays
      label={text('ways')}
      ways={[
        { href: addresses.blinds(shutdownId), label: text('blinds') },
        { href: addresses.items(shutdownId), label: text('items') },
      ]}
    />
  );
}
