import type { PackPage } from '@seatwell/contract';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { fieldAddresses } from '../work/addresses.ts';

/** What can be done with the pack: print it, or go on with its test. */
export function PackActions({ pack }: { pack: PackPage }) {
  const text = useText('packs');
  const go = useGo();
  const shutdownId = useShutdownId();
  const next = pack.state === 'released' ? 'to-readings' : pack.state === 'held' ? 'to-proof' : 'to-release';
  return (
    <>
      <Button onClick={() => window.print()}>{text('print')}</Button>
      {pack.state !== 'proven' && (
        <Button kind="primary" onClick={() => go(fieldAddresses.packTest(shutdownId, pack.packId))}>
          {text(next)}
        </Button>
      )}
    </>
  );
}
