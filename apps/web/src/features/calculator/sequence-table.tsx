import type { TighteningSequence } from '@seatwell/calc';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './sequence-table.module.css';

interface Props {
  readonly caption: string;
  readonly passes: TighteningSequence['passes'];
}

/** The order of the bolts, pass by pass. */
export function SequenceTable({ caption, passes }: Props) {
  const text = useText('calculator');
  const format = useFormat();
  return (
    <Table
      caption={caption}
      rows={passes.map((pass, index) => ({ ...pass, number: index + 1 }))}
      rowKey={(pass) => String(pass.number)}
      onPhone="table"
      columns={[
        {
          key: 'pass',
          header: text('pass'),
          rowHeader: true,
          cell: (pass) =>
            pass.kind === 'pattern'
              ? text('pass-at', { pass: format.count(pass.number), percent: format.percent(pass.percent / 100) })
              : text(pass.kind),
        },
        {
          key: 'order',
          header: text('bolts-in-order'),
          cell: (pass) => (
            <span className={styles.steps}>{pass.steps.map((step) => step.join(' + ')).join('  ·  ')}</span>
          ),
        },
      ]}
    />
  );
}
