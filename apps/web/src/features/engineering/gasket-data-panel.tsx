import { GASKET_FAMILIES_KNOWN, type GasketDataAnswer, type GasketFamilyCode } from '@seatwell/contract';
import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { Table } from '../../ui/table.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { DataEntry } from './data-entry.tsx';
import styles from './engineering.module.css';

const stresses = ['seating_MPa', 'operating_MPa', 'target_MPa', 'maximum_MPa'] as const;
type Stresses = { readonly [Name in (typeof stresses)[number]]: number | undefined };
const noStress: Stresses = {
  seating_MPa: undefined,
  operating_MPa: undefined,
  target_MPa: undefined,
  maximum_MPa: undefined,
};

/** Tested stresses of gaskets: the maker's or the site's own, never a guess. */
export function GasketDataPanel({ answer }: { answer: GasketDataAnswer }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('engineering');
  const words = useText('calculator');
  const trade = useTrade();
  const format = useFormat();
  return (
    <div className={styles.form}>
      <GasketDataForm against={reasonAgainst(answer.actions, 'gasket-data-entered')} />
      <Table
        caption={text('gasket-data')}
        captionHidden
        rows={answer.rows}
        rowKey={(row) => row.dataId}
        empty={text('no-gasket-data')}
        columns={[
          { key: 'name', header: text('name'), rowHeader: true, cell: (row) => row.name },
          { key: 'family', header: text('family'), cell: (row) => trade.word('family', row.content.family) },
          ...stresses.map((name) => ({
            key: name,
            header: text('stress-in', { what: text(name), unit: format.unit('stress') }),
            numeric: true,
            cell: (row: GasketDataAnswer['rows'][number]) => format.value('stress', row.content[name]),
          })),
          {
            key: 'rotation',
            header: `${words('input-rotationLimit_deg')}, °`,
            numeric: true,
            cell: (row) => (row.content.rotationLimit_deg ? format.number(row.content.rotationLimit_deg, 2) : '–'),
          },
          { key: 'source', header: text('source'), cell: (row) => row.content.source },
        ]}
      />
    </div>
  );
}

function GasketDataForm({ against }: { against: string | undefined }) {
  const text = useText('engineering');
  const words = useText('calculator');
  const trade = useTrade();
  const format = useFormat();
  const enter = useSiteCommand('gasket-data-entered');
  const [name, setName] = useState('');
  const [family, setFamily] = useState<GasketFamilyCode | ''>('');
  const [values, setValues] = useState(noStress);
  const [rotation_deg, setRotation] = useState<number | undefined>();
  const [source, setSource] = useState('');
  const { seating_MPa, operating_MPa, target_MPa, maximum_MPa } = values;
  const complete =
    name.trim() !== '' && family !== '' && source.trim() !== '' && stresses.every((each) => values[each] !== undefined);
  const send = () => {
    if (family === '' || seating_MPa === undefined || operating_MPa === undefined) return;
    if (target_MPa === undefined || maximum_MPa === undefined) return;
    const gasketDataId = newId();
    enter.mutate(
      {
        subjectId: gasketDataId,
        payload: {
          gasketDataId,
          name: name.trim(),
          family,
          seating_MPa,
          operating_MPa,
          target_MPa,
          maximum_MPa,
          ...(rotation_deg === undefined ? {} : { rotationLimit_deg: rotation_deg }),
          source: source.trim(),
        },
      },
      {
        onSuccess: () => {
          setName('');
          setValues(noStress);
          setRotation(undefined);
        },
      },
    );
  };
  return (
    <DataEntry legend={text('enter-gasket-data')} entering={enter} against={against} complete={complete} onEnter={send}>
      <TextField label={text('name')} value={name} onChange={setName} />
      <Select
        label={text('family')}
        value={family}
        onChange={setFamily}
        options={GASKET_FAMILIES_KNOWN.filter((value) => value !== 'none').map((value) => ({
          value,
          label: trade.word('family', value),
        }))}
      />
      {stresses.map((each) => {
        const held = values[each];
        return (
          <NumberField
            key={each}
            label={text(each)}
            unit={format.unit('stress')}
            value={held === undefined ? undefined : format.toShown('stress', held)}
            onChange={(shown) =>
              setValues((current) => ({
                ...current,
                [each]: shown === undefined ? undefined : format.toHeld('stress', shown),
              }))
            }
          />
        );
      })}
      <NumberField
        label={words('input-rotationLimit_deg')}
        optional
        unit="°"
        most={5}
        hint={words('rotation-hint')}
        value={rotation_deg}
        onChange={(value) => setRotation(value !== undefined && value > 0 ? value : undefined)}
      />
      <TextField label={text('source')} hint={text('gasket-source-hint')} value={source} onChange={setSource} />
    </DataEntry>
  );
}
