import type { LongCase, LongSimulation } from '@seatwell/calc';
import { useSaid } from '../../app/use-said.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import type { Way } from './choices.ts';
import { waysOfCases } from './long-run.ts';
import { usePatternWords } from './pattern-words.ts';

interface Row {
  readonly way: Way;
  readonly of: LongCase;
}

/** What every way comes to over all runs: where its lowest and highest bolt may lie. */
export function LongRunTable({ result, boltCount }: { readonly result: LongSimulation; readonly boltCount: number }) {
  const text = useText('simulation');
  const format = useFormat();
  const words = usePatternWords();
  const said = useSaid('calculation');
  const ways = waysOfCases(boltCount, result.cases.length);
  const rows = result.cases.flatMap((of, index): Row[] => (ways[index] ? [{ way: ways[index], of }] : []));
  const range = (from: number, to: number) => text('from-to', { from: format.count(from), to: format.count(to) });
  return (
    <>
      <Table
        caption={text('long-caption')}
        onPhone="cards"
        rows={rows}
        rowKey={({ way }) => words(way)}
        columns={[
          { key: 'pattern', header: text('pattern'), rowHeader: true, cell: ({ way }) => words(way) },
          { key: 'moves', header: text('moves-short'), numeric: true, cell: ({ of }) => format.count(of.moves) },
          {
            key: 'loads',
            header: text('lowest-highest'),
            numeric: true,
            cell: ({ of }) => range(of.final.min, of.final.max),
          },
          {
            key: 'lowest',
            header: text('band'),
            numeric: true,
            cell: ({ of }) => range(of.band.low.min, of.band.high.min),
          },
          {
            key: 'highest',
            header: text('long-highest'),
            numeric: true,
            cell: ({ of }) => range(of.band.low.max, of.band.high.max),
          },
          {
            key: 'tilt',
            header: text('tilt-short'),
            numeric: true,
            cell: ({ of }) => format.quantity('gap', of.largestParallelism_mm),
          },
        ]}
      />
      {result.warnings.map((warning) => (
        <p key={warning.message}>{said(warning)}</p>
      ))}
    </>
  );
}
