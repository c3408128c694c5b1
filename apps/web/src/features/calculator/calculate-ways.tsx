import { addresses } from '../../app/addresses.ts';
import { PageWays } from '../../app/page-ways.tsx';
import { useText } from '../../texts/text-provider.tsx';

/** The two calculations that need no register. */
export function CalculateWays() {
  const text = useText('calculator');
  return (
    <PageWays
      label={text('ways')}
      ways={[
        { href: addresses.calculate(), label: text('calculate') },
        { href: addresses.simulate(), label: text('simulation') },
      ]}
    />
  );
}
