import type { Tensioning } from '@seatwell/workflow';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Table } from '../../ui/table.tsx';
import { placesOf } from '../simulation/places.ts';
import { groupLetter } from '../tightening/group-letter.ts';
import styles from './engineering.module.css';

/** The pressure of each group in each pass of a tensioner, with its bolts, and what stands behind it. */
export function TensioningPlan({ plan }: { readonly plan: Tensioning }) {
  const text = useText('engineering');
  const format = useFormat();
  const rows = plan.passes.flatMap((pass, index) =>
    pass.groupPressures_MPa.map((pressure_MPa, group) => ({
      pass: index + 1,
      group: groupLetter(group),
      pressure_MPa,
      bolts: placesOf(plan.groups[group] ?? []),
    })),
  );
  return (
    <section className={styles.form}>
      <Table
        caption={text('tensioning-caption', { tool: plan.toolTag, percent: format.percent(plan.coverage) })}
        rows={rows}
        rowKey={(row) => `${row.pass} ${row.group}`}
        onPhone="table"
        columns={[
          { key: 'pass', header: text('pass'), rowHeader: true, cell: (row) => format.count(row.pass) },
          { key: 'group', header: text('tensioning-group'), cell: (row) => row.group },
          {
            key: 'value',
            header: text('pump-pressure'),
            numeric: true,
            cell: (row) => format.quantity('pressure', row.pressure_MPa),
          },
          { key: 'bolts', header: text('places'), cell: (row) => row.bolts },
        ]}
      />
      <KeyValues
        items={[
          { name: text('residual-load'), value: format.quantity('load', plan.residualLoad_N) },
          { name: text('load-transfer-factor'), value: format.number(plan.loadTransferFactor, 3) },
          { name: text('tool-load'), value: format.quantity('load', plan.toolLoad_N) },
          { name: text('share-of-yield'), value: format.percent(plan.utilisation) },
        ]}
      />
      <ul>
        {plan.warnings.map((warning) => (
          <li key={warning}>{warning}</li>
        ))}
        <li>{text('tensioner-protrusion', { length: format.quantity('gap', plan.protrusion_mm) })}</li>
      </ul>
    </section>
  );
}
