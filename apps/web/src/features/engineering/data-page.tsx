import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { addresses } from '../../app/addresses.ts';
import { gasketDataQuery, lubricantsQuery, makerTorquesQuery, targetTablesQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { useGo } from '../../app/use-go.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { GasketDataPanel } from './gasket-data-panel.tsx';
import { LubricantsPanel } from './lubricants-panel.tsx';
import { MakerTorquesPanel } from './maker-torques-panel.tsx';
import { TargetTablesPanel } from './target-tables-panel.tsx';

/** What targets are calculated from, each with its source, and the tables that were approved. */
export function DataPage() {
  const text = useText('engineering');
  const format = useFormat();
  const go = useGo();
  const search = useSearch({ strict: false }) as Record<string, unknown>;
  const { data: gaskets } = useSuspenseQuery(gasketDataQuery);
  const { data: lubricants } = useSuspenseQuery(lubricantsQuery);
  const { data: torques } = useSuspenseQuery(makerTorquesQuery);
  const { data: tables } = useSuspenseQuery(targetTablesQuery);
  const count = (rows: readonly unknown[]) => format.count(rows.length);
  return (
    <>
      <PageHeader
        title={text('data')}
        sub={text('data-sub')}
        over={<Link href={addresses.procedures()}>{text('procedures')}</Link>}
      />
      <Tabs
        label={text('data')}
        value={textOf(search.part) ?? 'gaskets'}
        onChange={(part) => go(addresses.data({ part }), { replace: true })}
        tabs={[
          {
            value: 'gaskets',
            label: text('gasket-data'),
            count: count(gaskets.rows),
            content: <GasketDataPanel answer={gaskets} />,
          },
          {
            value: 'lubricants',
            label: text('lubricants'),
            count: count(lubricants.rows),
            content: <LubricantsPanel answer={lubricants} />,
          },
          {
            value: 'tables',
            label: text('target-tables'),
            count: count(tables.rows),
            content: <TargetTablesPanel answer={tables} tableId={textOf(search.table)} />,
          },
          {
            value: 'torques',
            label: text('maker-torques'),
            count: count(torques.rows),
            content: <MakerTorquesPanel answer={torques} />,
          },
        ]}
      />
    </>
  );
}
