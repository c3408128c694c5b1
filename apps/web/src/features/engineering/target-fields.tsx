import type { TighteningMethod } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { gasketDataQuery, lubricantsQuery, targetTablesQuery } from '../../app/reads.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { TargetDraft } from './target-draft.ts';
import { TensionerFields } from './tensioner-fields.tsx';
import { WayFields } from './way-fields.tsx';

interface Props {
  readonly value: TargetDraft;
  readonly onChange: (value: TargetDraft) => void;
  /** only gasket data of this family is offered; undefined = all */
  readonly family?: string | undefined;
  /** of the assigned procedure */
  readonly method?: TighteningMethod | undefined;
}

const bases = ['calculated', 'target-table', 'makers-torque'] as const;

/** On what a target rests, and what it is calculated from. */
export function TargetFields({ value, onChange, family, method }: Props) {
  const text = useText('engineering');
  return (
    <>
      <RadioCards
        label={text('basis')}
        value={value.basis}
        onChange={(basis) => onChange({ ...value, basis })}
        options={bases.map((each) => ({
          value: each,
          label: text(`basis-${each}`),
          detail: text(`basis-${each}-detail`),
        }))}
      />
      {value.basis === 'calculated' && (
        <CalculatedFields value={value} onChange={onChange} family={family} method={method} />
      )}
      {value.basis === 'target-table' && <TableField value={value} onChange={onChange} />}
      {value.basis === 'makers-torque' && <MakerFields value={value} onChange={onChange} />}
    </>
  );
}

function CalculatedFields({ value, onChange, family, method }: Props) {
  const text = useText('engineering');
  const trade = useTrade();
  const format = useFormat();
  const gaskets = useQuery(gasketDataQuery);
  const lubricants = useQuery(lubricantsQuery);
  const stress = value.boltStress_MPa;
  const offered = (gaskets.data?.rows ?? []).filter((row) => family === undefined || row.content.family === family);
  return (
    <>
      <ErrorNotice error={gaskets.error ?? lubricants.error} />
      <Select
        label={text('gasket-data')}
        value={value.gasketDataId}
        onChange={(gasketDataId) => onChange({ ...value, gasketDataId })}
        options={offered.map((row) => ({
          value: row.dataId,
          label: row.name,
          detail: `${trade.word('family', row.content.family)}, ${row.content.source}`,
        }))}
      />
      {gaskets.data && offered.length === 0 && (
        <p>
          {family === undefined
            ? text('no-gasket-data')
            : text('no-gasket-data-of', { family: trade.word('family', family) })}{' '}
          <Link href={addresses.data()}>{text('enter-data')}</Link>
        </p>
      )}
      <Select
        label={text('lubricant')}
        value={value.lubricantId}
        onChange={(lubricantId) => onChange({ ...value, lubricantId })}
        options={(lubricants.data?.rows ?? []).map((row) => ({
          value: row.dataId,
          label: row.name,
          detail: text('nut-factor-of', {
            factor: format.number(row.content.nutFactor, 2),
            source: row.content.source,
          }),
        }))}
      />
      <NumberField
        label={text('bolt-stress')}
        optional
        unit={format.unit('stress')}
        hint={text('bolt-stress-hint')}
        decimals={1}
        value={stress === undefined ? undefined : format.toShown('stress', stress)}
        onChange={(shown) =>
          onChange({ ...value, boltStress_MPa: shown === undefined ? undefined : format.toHeld('stress', shown) })
        }
      />
      <TextField
        label={text('shortfall')}
        optional
        lines={2}
        hint={text('shortfall-hint')}
        value={value.acceptedShortfall}
        onChange={(acceptedShortfall) => onChange({ ...value, acceptedShortfall })}
      />
      {method === 'tensioner' && <TensionerFields value={value} onChange={onChange} />}
      {family !== undefined && method !== 'tensioner' && <WayFields value={value} onChange={onChange} />}
    </>
  );
}

function TableField({ value, onChange }: Props) {
  const text = useText('engineering');
  const tables = useQuery(targetTablesQuery);
  return (
    <>
      <ErrorNotice error={tables.error} />
      <Select
        label={text('target-table')}
        value={value.tableId}
        onChange={(tableId) => onChange({ ...value, tableId })}
        options={(tables.data?.rows ?? []).map((row) => ({
          value: row.tableId,
          label: row.name,
          detail: row.content.boltGrade,
        }))}
      />
      {tables.data?.rows.length === 0 && <p>{text('no-table')}</p>}
    </>
  );
}

function MakerFields({ value, onChange }: Props) {
  const text = useText('engineering');
  const format = useFormat();
  const unit = format.unit('torque');
  return (
    <>
      <NumberField
        label={text('makers-torque')}
        unit={unit}
        value={value.torqueAsEntered?.value}
        onChange={(shown) =>
          onChange({
            ...value,
            torque_Nm: shown === undefined ? undefined : format.toHeld('torque', shown),
            torqueAsEntered: shown === undefined ? undefined : { value: shown, unit },
          })
        }
      />
      <TextField
        label={text('makers-lubricant')}
        value={value.lubricant}
        onChange={(lubricant) => onChange({ ...value, lubricant })}
      />
      <TextField
        label={text('source')}
        lines={2}
        hint={text('makers-source-hint')}
        value={value.source}
        onChange={(source) => onChange({ ...value, source })}
      />
    </>
  );
}
