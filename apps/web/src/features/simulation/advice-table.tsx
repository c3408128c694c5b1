import type { Advice, PatternAdvice } from '@seatwell/calc';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Table } from '../../ui/table.tsx';
import { usePatternWords } from './pattern-words.ts';
import styles from './simulation.module.css';

interface Props {
  readonly advice: Advice;
  readonly onCompare: (advice: PatternAdvice) => void;
}

/** The patterns ranked by moves and wrench time; those inside the band have the same rank. */
export function AdviceTable({ advice, onCompare }: Props) {
  const text = useText('simulation');
  const format = useFormat();
  const words = usePatternWords();
  return (
    <section className={styles.section}>
      <Table
        caption={text('advice', { limit: format.count(advice.limit_percent) })}
        onPhone="cards"
        rows={advice.patterns}
        rowKey={(row) => words(row.choice)}
        columns={[
          {
            key: 'rank',
            header: text('rank'),
            numeric: true,
            cell: (row) => (row.rank === undefined ? text('no-rank') : format.count(row.rank)),
          },
          {
            key: 'pattern',
            header: text('pattern'),
            rowHeader: true,
            cell: (row) => (
              <Button
                kind="quiet"
                label={text('show-of', { pattern: words(row.choice) })}
                onClick={() => onCompare(row)}
              >
                {words(row.choice)}
              </Button>
            ),
          },
          {
            key: 'rounds',
            header: text('extra-rounds'),
            cell: (row) =>
              row.extraRounds === undefined
                ? text('not-met')
                : text('rounds', { count: row.extraRounds, shown: format.count(row.extraRounds) }),
          },
          {
            key: 'moves',
            header: text('moves-short'),
            numeric: true,
            cell: (row) =>
              row.movesBand === undefined || row.movesBand.low === row.movesBand.high
                ? format.count(row.moves)
                : text('moves-band', {
                    moves: format.count(row.moves),
                    low: format.count(row.movesBand.low),
                    high: format.count(row.movesBand.high),
                  }),
          },
          { key: 'time', header: text('time'), numeric: true, cell: (row) => format.duration(row.time_min) },
          {
            key: 'loads',
            header: text('lowest-highest'),
            numeric: true,
            cell: (row) => text('from-to', { from: format.count(row.final.min), to: format.count(row.final.max) }),
          },
          {
            key: 'tilt',
            header: text('tilt-short'),
            numeric: true,
            cell: (row) => format.quantity('gap', row.largestParallelism_mm),
          },
          {
            key: 'peak',
            header: text('peak-short'),
            numeric: true,
            cell: (row) => format.quantity('stress', row.gasketPeak_MPa),
          },
        ]}
      />
      <p>{advice.statement}</p>
      <p className={styles.soft}>
        {text('columns')} {text('times')}
      </p>
    </section>
  );
}
