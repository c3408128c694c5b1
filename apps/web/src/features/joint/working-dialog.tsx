import type { CalcTargetResponse } from '@seatwell/contract';
import { decimalsFor } from '../../format/decimals.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { Table } from '../../ui/table.tsx';

/** Every step of the calculation: an engineer can follow it by hand. */
export function WorkingDialog({ answer, onClose }: { answer: CalcTargetResponse; onClose: () => void }) {
  const text = useText('joint');
  const format = useFormat();
  const steps = (answer.working ?? []).map((step, index) => ({ ...step, index }));
  return (
    <Dialog
      open
      wide
      onOpenChange={(open) => open || onClose()}
      title={text('working-and-sources')}
      description={text('working-detail')}
      actions={
        <Button kind="primary" onClick={onClose}>
          {text('close')}
        </Button>
      }
    >
      <Table
        caption={text('working-and-sources')}
        captionHidden
        rows={steps}
        rowKey={(step) => String(step.index)}
        columns={[
          { key: 'symbol', header: text('symbol'), rowHeader: true, cell: (step) => step.symbol },
          { key: 'meaning', header: text('meaning'), cell: (step) => step.meaning },
          { key: 'formula', header: text('formula'), cell: (step) => step.formula },
          { key: 'numbers', header: text('numbers'), cell: (step) => step.substituted },
          {
            key: 'value',
            header: text('value'),
            numeric: true,
            cell: (step) => `${format.number(step.value, decimalsFor(step.value))} ${step.unit}`,
          },
          { key: 'source', header: text('source'), cell: (step) => step.source },
        ]}
      />
    </Dialog>
  );
}
