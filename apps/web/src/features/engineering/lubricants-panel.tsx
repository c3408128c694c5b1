import type { LubricantsAnswer } from '@seatwell/contract';
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

/** Lubricants with their nut factor and its source: no friction is ever assumed silently. */
export function LubricantsPanel({ answer }: { answer: LubricantsAnswer }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('engineering');
  const format = useFormat();
  const enter = useSiteCommand('lubricant-entered');
  const [name, setName] = useState('');
  const [nutFactor, setNutFactor] = useState<number | undefined>();
  const [limit, setLimit] = useState<number | undefined>();
  const [source, setSource] = useState('');
  const against = reasonAgainst(answer.actions, 'lubricant-entered');
  const complete = name.trim() !== '' && source.trim() !== '' && nutFactor !== undefined;
  const send = () => {
    if (nutFactor === undefined) return;
    const lubricantId = newId();
    enter.mutate(
      {
        subjectId: lubricantId,
        payload: {
          lubricantId,
          name: name.trim(),
          nutFactor,
          temperatureLimit_C: limit ?? null,
          source: source.trim(),
        },
      },
      {
        onSuccess: () => {
          setName('');
          setNutFactor(undefined);
        },
      },
    );
  };
  return (
    <div className={styles.form}>
      <DataEntry legend={text('enter-lubricant')} entering={enter} against={against} complete={complete} onEnter={send}>
        <TextField label={text('name')} value={name} onChange={setName} />
        <NumberField
          label={text('nut-factor')}
          least={0.05}
          most={0.5}
          decimals={3}
          value={nutFactor}
          onChange={setNutFactor}
        />
        <NumberField
          label={text('temperature-limit')}
          optional
          unit={format.unit('temperature')}
          decimals={0}
          value={limit === undefined ? undefined : format.toShown('temperature', limit)}
          onChange={(shown) => setLimit(shown === undefined ? undefined : format.toHeld('temperature', shown))}
        />
        <TextField label={text('source')} hint={text('lubricant-source-hint')} value={source} onChange={setSource} />
      </DataEntry>
      <Table
        caption={text('lubricants')}
        captionHidden
        rows={answer.rows}
        rowKey={(row) => row.dataId}
        empty={text('no-lubricant-yet')}
        columns={[
          { key: 'name', header: text('name'), rowHeader: true, cell: (row) => row.name },
          {
            key: 'factor',
            header: text('nut-factor'),
            numeric: true,
            cell: (row) => format.number(row.content.nutFactor, 3),
          },
          {
            key: 'limit',
            header: text('temperature-limit'),
            numeric: true,
            cell: (row) => format.quantity('temperature', row.content.temperatureLimit_C),
          },
          { key: 'source', header: text('source'), cell: (row) => row.content.source },
        ]}
      />
    </div>
  );
}
