import type { PackPage } from '@seatwell/contract';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { fieldAddresses } from '../work/addresses.ts';

const withGas: readonly string[] = ['pneumatic-test', 'gas-or-sniff-test'];

/** What can be done with the pack: print its sheet, or go on with its test. */
export function PackActions({ pack }: { pack: PackPage }) {
  const text = useText('packs');
  const go = useGo();
  const shutdownId = useShutdownId();
  const [asking, setAsking] = useState(false);
  const next = pack.state === 'released' ? 'to-readings' : pack.state === 'held' ? 'to-proof' : 'to-release';
  const print = (query: Record<string, number> = {}) =>
    window.open(addresses.testSheet(shutdownId, pack.packId, query), '_blank', 'noopener');
  return (
    <>
      <Button onClick={() => (withGas.includes(pack.way) ? setAsking(true) : print())}>{text('print')}</Button>
      {pack.state !== 'proven' && (
        <Button kind="primary" onClick={() => go(fieldAddresses.packTest(shutdownId, pack.packId))}>
          {text(next)}
        </Button>
      )}
      {asking && <GasVolume onPrint={print} onClose={() => setAsking(false)} />}
    </>
  );
}

/** The volume of gas that the exclusion distance is computed from; left empty, the sheet says that it is missing. */
function GasVolume({ onPrint, onClose }: { onPrint: (query: Record<string, number>) => void; onClose: () => void }) {
  const text = useText('packs');
  const [volume_m3, setVolume] = useState<number | undefined>();
  return (
    <Dialog
      open
      onOpenChange={(open) => open || onClose()}
      title={text('gas-title')}
      actions={
        <>
          <Button onClick={onClose}>{text('cancel')}</Button>
          <Button
            kind="primary"
            onClick={() => {
              onPrint(volume_m3 === undefined ? {} : { volume_m3 });
              onClose();
            }}
          >
            {text('print-now')}
          </Button>
        </>
      }
    >
      <NumberField
        label={text('gas-volume')}
        hint={text('gas-volume-hint')}
        optional
        unit="m³"
        least={0.001}
        value={volume_m3}
        onChange={setVolume}
      />
    </Dialog>
  );
}
