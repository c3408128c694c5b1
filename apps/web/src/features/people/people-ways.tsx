import { addresses } from '../../app/addresses.ts';
import { PageWays } from '../../app/page-ways.tsx';
import { useMay } from '../../app/session.ts';
import { useCurrentShutdown } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';

/** People, their talks, and who may sign in. */
export function PeopleWays() {
  const text = useText('people');
  const shutdown = useCurrentShutdown();
  const may = useMay();
  return (
    <PageWays
      label={text('ways')}
      ways={[
        { href: addresses.people(), label: text('people') },
        ...(shutdown ? [{ href: addresses.talks(shutdown.shutdownId), label: text('talks') }] : []),
        ...(may('manage-accounts') ? [{ href: addresses.accounts(), label: text('accounts') }] : []),
      ]}
    />
  );
}
