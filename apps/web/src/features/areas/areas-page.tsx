import { useSearch } from '@tanstack/react-router';
import { Suspense } from 'react';
import { addresses } from '../../app/addresses.ts';
import { textOf } from '../../app/search-params.ts';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Skeleton } from '../../ui/skeleton.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { AreaRows } from './area-rows.tsx';
import { ProgressBy } from './progress-by.tsx';

const views = ['area', 'system', 'pack', 'crew'] as const;

/** Where the work stands, who must still sign, and whether the people there may do the work. */
export function AreasPage() {
  const text = useText('areas');
  const shutdownId = useShutdownId();
  const go = useGo();
  const asked = textOf(useSearch({ strict: false, select: (search: Record<string, unknown>) => search.by }));
  const by = views.find((view) => view === asked) ?? 'area';
  return (
    <>
      <PageHeader title={text('areas')} sub={text('areas-sub')} />
      <Tabs
        label={text('by')}
        value={by}
        onChange={(value) =>
          go(addresses.areas(shutdownId, { by: value === 'area' ? undefined : value }), { replace: true })
        }
        tabs={views.map((view) => ({
          value: view,
          label: text(`by-${view}`),
          content: (
            <Suspense fallback={<Skeleton lines={8} />}>
              {view === 'area' ? (
                <AreaRows shutdownId={shutdownId} />
              ) : (
                <ProgressBy shutdownId={shutdownId} by={view} />
              )}
            </Suspense>
          ),
        }))}
      />
    </>
  );
}
