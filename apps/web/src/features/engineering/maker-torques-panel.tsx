import type { MakerTorquesAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Table } from '../../ui/table.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { DataEntry } from './data-entry.tsx';
import styles from './engineering.module.css';

/** Torques of makers, for joints where nothing is computed. */
export function MakerTorquesPanel({ answer }: { answer: MakerTorquesAnswer }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('engineering');
  const format = useFormat();
  const unit = format.unit('torque');
  const enter = useSiteCommand('maker-torque-entered');
  const [item, setItem] = useState('');
  const [torque, setTorque] = useState<number | undefined>();
  const [source, setSource] = useState('');
  const against = reasonAgainst(answer.actions, 'maker-torque-entered');
  const complete = item.trim() !== '' && source.trim() !== '' && torque !== undefined;
  const send = () => {
    if (torque === undefined) return;
    const makerTorqueId = newId();
    enter.mutate(
      {
        subjectId: makerTorqueId,
        payload: {
          makerTorqueId,
          item: item.trim(),
          torque_Nm: format.toHeld('torque', torque),
          torqueAsEntered: { value: torque, unit },
          source: source.trim(),
        },
      },
      {
        onSuccess: () => {
          setItem('');
          setTorque(undefined);
        },
      },
    );
  };
  return (
    <div className={styles.form}>
      <DataEntry
        legend={text('enter-maker-torque')}
        entering={enter}
        against={against}
        complete={complete}
        onEnter={send}
      >
        <TextField label={text('item')} value={item} onChange={setItem} />
        <NumberField label={text('makers-torque')} unit={unit} value={torque} onChange={setTorque} />
        <TextField label={text('source')} hint={text('makers-source-hint')} value={source} onChange={setSource} />
      </DataEntry>
      <Table
        caption={text('maker-torques')}
        captionHidden
        rows={answer.rows}
        rowKey={(row) => row.dataId}
        empty={text('no-maker-torque')}
        columns={[
          { key: 'item', header: text('item'), rowHeader: true, cell: (row) => row.content.item },
          {
            key: 'torque',
            header: text('makers-torque'),
            numeric: true,
            cell: (row) => format.quantity('torque', row.content.torque_Nm),
          },
          { key: 'source', header: text('source'), cell: (row) => row.content.source },
        ]}
      />
    </div>
  );
}
