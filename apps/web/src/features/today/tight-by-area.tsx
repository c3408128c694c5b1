import type { TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { StackedBar } from '../../ui/stacked-bar.tsx';

// Three joints in a hundred behind the plan is late; less is noise of a shift.
const lateShare = 0.03;

/** Joints checked, tight and begun in each area, with the plan for now as a mark. */
export function TightByArea({ shutdownId, rows }: { shutdownId: string; rows: TodayAnswer['tightByArea'] }) {
  const text = useText('today');
  const format = useFormat();
  return (
    <StackedBar
      title={text('tight-by-area')}
      parts={[text('part-checked'), text('part-tight'), text('part-begun')]}
      markName={text('planned-now')}
      formatNumber={format.count}
      rows={rows.map((row) => {
        const done = row.total === 0 ? 0 : (row.checked + row.tight) / row.total;
        const planned = row.total === 0 ? 0 : row.planned / row.total;
        return {
          key: row.area?.areaId ?? 'none',
          label: row.area?.name ?? text('no-area'),
          ...(row.area === null ? {} : { href: addresses.register(shutdownId, { area: row.area.areaId }) }),
          values: [row.checked, row.tight, row.begun],
          total: row.total,
          mark: row.planned,
          valueText: text('done-of-plan', { done: format.percent(done), planned: format.percent(planned) }),
          attention: done < planned - lateShare,
        };
      })}
    />
  );
}
