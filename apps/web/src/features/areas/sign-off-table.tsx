import type { AreaProgress } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './areas.module.css';

type SignOff = AreaProgress['signOffs'][number];

interface Props {
  readonly caption: string;
  readonly rows: readonly SignOff[];
  readonly hrefOf: (waitsFor: string) => string;
}

/** Sign-offs given, waiting, and for whom they wait. */
export function SignOffTable({ caption, rows, hrefOf }: Props) {
  const text = useText('areas');
  const trade = useTrade();
  const format = useFormat();
  return (
    <Table
      caption={caption}
      captionHidden
      rows={rows}
      rowKey={(row) => row.what}
      onPhone="table"
      columns={[
        { key: 'what', header: text('sign-off'), cell: (row) => trade.word('signoff', row.what) },
        { key: 'given', header: text('given'), numeric: true, cell: (row) => format.count(row.given) },
        {
          key: 'waiting',
          header: text('waiting'),
          numeric: true,
          cell: (row) =>
            row.waiting === 0 ? (
              format.count(0)
            ) : (
              <Link className={styles.attention} href={hrefOf(row.what)}>
                {format.count(row.waiting)}
              </Link>
            ),
        },
        { key: 'by', header: text('for-whom'), cell: (row) => <ForWhom by={row.by} /> },
      ]}
    />
  );
}

function ForWhom({ by }: Pick<SignOff, 'by'>) {
  const text = useText('areas');
  const trade = useTrade();
  const format = useFormat();
  return (
    <>
      {by
        .filter((each) => each.count > 0)
        .map(({ role, count, persons }) => (
          <span key={role} className={styles.whom}>
            {by.length > 1
              ? text('role-count', { role: trade.word('role', role), count: format.count(count) })
              : trade.word('role', role)}
            {persons.length > 0 && (
              <span className={styles.soft}>
                {persons
                  .slice(0, 3)
                  .map((person) => person.name ?? text('name-erased'))
                  .join(', ')}
              </span>
            )}
          </span>
        ))}
    </>
  );
}
