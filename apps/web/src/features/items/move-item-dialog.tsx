import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useTrade } from '../../app/use-trade.ts';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { ItemRow } from './item-table.tsx';
import { WHEREABOUTS, type Whereabouts } from './whereabouts.ts';

/** Records where an item went. */
export function MoveItemDialog({ row, onClose }: { row: ItemRow; onClose: () => void }) {
  const text = useText('items');
  const trade = useTrade();
  const move = useFactCommand('item-moved');
  const [whereabouts, setWhereabouts] = useState<Whereabouts | ''>('');
  const [remark, setRemark] = useState('');
  const send = () => {
    if (whereabouts === '') return;
    move.mutate(
      {
        subjectId: row.itemId,
        label: row.tag,
        payload: { whereabouts, remark: remark.trim() === '' ? null : remark.trim() },
      },
      { onSuccess: onClose },
    );
  };
  return (
    <FormDialog
      title={text('where-is', { tag: row.tag })}
      description={text('where-it-was', { where: trade.word('whereabouts', row.whereabouts) })}
      sendLabel={text('move')}
      missing={whereabouts === '' ? text('where-needed') : undefined}
      busy={move.isPending}
      error={move.error}
      onSend={send}
      onClose={onClose}
    >
      <RadioCards
        label={text('whereabouts')}
        value={whereabouts}
        onChange={setWhereabouts}
        options={WHEREABOUTS.filter((value) => value !== row.whereabouts).map((value) => ({
          value,
          label: trade.word('whereabouts', value),
        }))}
      />
      <TextField label={text('remark')} optional lines={2} value={remark} onChange={setRemark} />
    </FormDialog>
  );
}
