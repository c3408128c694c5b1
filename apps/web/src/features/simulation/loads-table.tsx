import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import { usePatternWords } from './pattern-words.ts';
import type { SimulatedPattern } from './run-simulation.ts';

/** The load of every bolt at the step in sight and at the end, for those who prefer numbers. */
export function LoadsTable({ patterns, at }: { patterns: readonly SimulatedPattern[]; at: number }) {
  const text = useText('simulation');
  const format = useFormat();
  const words = usePatternWords();
  const count = patterns[0]?.simulation.steps[0]?.loads_percent.length ?? 0;
  const rows = Array.from({ length: count }, (_, index) => index);
  const load = (pattern: SimulatedPattern, step: number, bolt: number) => {
    const { steps } = pattern.simulation;
    return format.number(steps[Math.min(step, steps.length - 1)]?.loads_percent[bolt] ?? 0, 1);
  };
  return (
    <Table
      caption={text('loads-table')}
      rows={rows}
      rowKey={String}
      onPhone="table"
      columns={[
        { key: 'bolt', header: text('bolt'), rowHeader: true, cell: (bolt) => format.count(bolt + 1) },
        ...patterns.flatMap((pattern, index) => [
          {
            key: `now ${index}`,
            header: text('now-of', { pattern: words(pattern.choice) }),
            numeric: true,
            cell: (bolt: number) => load(pattern, at, bolt),
          },
          {
            key: `end ${index}`,
            header: text('end-of', { pattern: words(pattern.choice) }),
            numeric: true,
            cell: (bolt: number) => load(pattern, Number.MAX_SAFE_INTEGER, bolt),
          },
        ]),
      ]}
    />
  );
}
