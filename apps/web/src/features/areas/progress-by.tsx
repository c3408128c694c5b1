import type { ProgressAnswer } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { progressQuery } from '../../app/reads.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { StackedBar } from '../../ui/stacked-bar.tsx';
import { progressOf } from './progress.ts';

/** Progress by system, test pack or crew. */
export function ProgressBy({ shutdownId, by }: { shutdownId: string; by: Exclude<ProgressAnswer['by'], 'area'> }) {
  const text = useText('areas');
  const format = useFormat();
  const { data } = useSuspenseQuery(progressQuery(shutdownId, by));
  if (data.rows.length === 0) return <EmptyState title={text('progress-none')} />;
  return (
    <StackedBar
      title={text(`progress-by-${by}`)}
      parts={[text('part-checked'), text('part-tight'), text('part-begun')]}
      formatNumber={format.count}
      rows={data.rows.map((row) => {
        const { checked, tight, begun } = progressOf(row.stages);
        return {
          key: row.id ?? 'none',
          label: [row.code, row.name === row.code ? null : row.name].filter(Boolean).join(' ') || text('in-none'),
          ...(row.id === null ? {} : { href: addresses.register(shutdownId, { [by]: row.id }) }),
          values: [checked, tight, begun],
          total: row.total,
          valueText: text('tight-of', { tight: format.count(checked + tight), total: format.count(row.total) }),
        };
      })}
    />
  );
}
