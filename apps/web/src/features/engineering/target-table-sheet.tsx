import { type CrewTableRow, crewTable } from '@seatwell/calc';
import type { TargetTablesAnswer } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { gasketDataQuery, lubricantsQuery, proceduresQuery } from '../../app/reads.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Link } from '../../ui/link.tsx';
import { Table, type TableColumn } from '../../ui/table.tsx';
import styles from './engineering.module.css';
import { useBoltsWords } from './use-bolts-words.ts';

interface Props {
  readonly table: TargetTablesAnswer['rows'][number];
}

/** An approved target table as crews carry it: one row a flange, one column a pass, and what it was approved for. */
export function TargetTableSheet({ table }: Props) {
  const text = useText('engineering');
  const trade = useTrade();
  const format = useFormat();
  const boltsWords = useBoltsWords();
  const procedures = useQuery(proceduresQuery);
  const gaskets = useQuery(gasketDataQuery);
  const lubricants = useQuery(lubricantsQuery);
  const { content } = table;
  const procedure = procedures.data?.rows.find(
    (row) => row.procedureId === content.procedureId && row.revision === content.procedureRevision,
  );
  const gasket = gaskets.data?.rows.find((row) => row.dataId === content.gasketDataId);
  const lubricant = lubricants.data?.rows.find((row) => row.dataId === content.lubricantId);
  const { passPercents = [], method, policy } = procedure?.content ?? {};
  const rows =
    method === undefined || policy === undefined || lubricant === undefined
      ? []
      : crewTable({
          rows: content.rows,
          area: policy.area,
          method,
          lubricant: { nutFactor: lubricant.content.nutFactor, source: lubricant.content.source },
          passPercents,
        });
  // Where no nut is turned under load, a pass is a bolt load.
  const turned = method === 'torque-wrench' || method === 'hydraulic-wrench';
  const noteOf = (row: CrewTableRow) =>
    'refused' in row
      ? row.refused
      : content.rows.find((one) => one.size === row.size && one.rating === row.rating)?.acceptedShortfall;
  return (
    <article className={styles.form}>
      <span className={styles.screenOnly}>
        <Link href={addresses.data({ part: 'tables' })}>{text('target-tables')}</Link>
        <Button onClick={() => window.print()}>{text('print-table')}</Button>
      </span>
      <ErrorNotice error={procedures.error ?? gaskets.error ?? lubricants.error} />
      <h2>{table.name}</h2>
      <KeyValues
        items={[
          {
            name: text('state'),
            value: text('approved-by', { who: table.approvedBy?.name ?? '', at: format.day(table.approvedAt) }),
          },
          {
            name: text('procedure'),
            value: procedure && text('revision-of', { code: procedure.code, revision: procedure.revision }),
          },
          { name: text('method'), value: method && trade.word('method', method) },
          { name: text('grade'), value: content.boltGrade },
          { name: text('bolts'), value: procedure && boltsWords(procedure.content.bolts) },
          { name: text('gasket-data'), value: gasket && `${gasket.name} · ${gasket.content.source}` },
          {
            name: text('lubricant'),
            value:
              lubricant &&
              text('lubricant-of-table', {
                name: lubricant.name,
                factor: format.number(lubricant.content.nutFactor, 2),
                source: lubricant.content.source,
              }),
          },
        ]}
      />
      <Table
        caption={text('crew-table', { unit: format.unit(turned ? 'torque' : 'load') })}
        rows={rows}
        rowKey={(row) => `${row.standard} ${row.size} ${row.rating}`}
        onPhone="table"
        columns={[
          { key: 'flange', header: text('flange'), rowHeader: true, cell: (row) => trade.flange(row.size, row.rating) },
          ...columnsOf({ text, trade, format, passPercents, turned }),
          { key: 'note', header: text('note'), cell: noteOf },
        ]}
      />
      <p>{text('table-not-checked')}</p>
      <p>{text('crew-table-call')}</p>
    </article>
  );
}

interface Tools {
  readonly text: ReturnType<typeof useText<'engineering'>>;
  readonly trade: ReturnType<typeof useTrade>;
  readonly format: ReturnType<typeof useFormat>;
  readonly passPercents: readonly number[];
  readonly turned: boolean;
}

function columnsOf({ text, trade, format, passPercents, turned }: Tools): TableColumn<CrewTableRow>[] {
  const computed = (row: CrewTableRow) => ('refused' in row ? undefined : row);
  return [
    {
      key: 'bolts',
      header: text('bolts'),
      cell: (row) => trade.bolts(computed(row)?.boltCount ?? null, computed(row)?.boltThread ?? null),
    },
    {
      key: 'socket',
      header: text('socket-in', { unit: format.unit('length') }),
      numeric: true,
      cell: (row) => format.value('length', computed(row)?.acrossFlats_mm),
    },
    {
      key: 'stress',
      header: text('stress-in', { what: text('bolt-stress'), unit: format.unit('stress') }),
      numeric: true,
      cell: (row) => format.value('stress', computed(row)?.boltStress_MPa),
    },
    ...passPercents.map((percent, index) => ({
      key: `pass ${index}`,
      header: text('pass-torque', {
        number: format.count(index + 1),
        percent: format.percent(percent / 100),
      }),
      numeric: true,
      cell: (row: CrewTableRow) => {
        const pass = computed(row)?.passes[index];
        return turned ? format.value('torque', pass?.torque_Nm) : format.value('load', pass?.load_N);
      },
    })),
  ];
}
