import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { addresses } from '../../app/addresses.ts';
import { choicesQuery, shutdownQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { AreasPanel } from './areas-panel.tsx';
import { CrewsPanel } from './crews-panel.tsx';
import { SettingsPanel } from './settings-panel.tsx';
import { SystemsPanel } from './systems-panel.tsx';

/** What a shutdown is made of: areas, systems, crews, and what each criticality demands. */
export function SetupPage() {
  const text = useText('setup');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const go = useGo();
  const search = useSearch({ strict: false }) as Record<string, unknown>;
  const { data: shutdown } = useSuspenseQuery(shutdownQuery(shutdownId));
  const { data: choices } = useSuspenseQuery(choicesQuery(shutdownId));
  const panel = { shutdown, choices };
  return (
    <>
      <PageHeader
        title={text('title', { name: shutdown.name })}
        sub={[
          text('from-to', { from: format.calendarDay(shutdown.startsOn), to: format.calendarDay(shutdown.endsOn) }),
          shutdown.timeZone.replaceAll('_', ' '),
          shutdown.shifts.map((shift) => `${shift.name} ${shift.starts}–${shift.ends}`).join(', '),
          text(`area-basis-${shutdown.areaBasis}`),
        ].join(' · ')}
        actions={<Button onClick={() => go(addresses.importRegister(shutdownId))}>{text('import')}</Button>}
      />
      <Tabs
        label={text('parts')}
        value={textOf(search.part) ?? 'areas'}
        onChange={(part) => go(addresses.setup(shutdownId, { part }), { replace: true })}
        tabs={[
          {
            value: 'areas',
            label: text('areas'),
            count: format.count(choices.areas.length),
            content: <AreasPanel {...panel} />,
          },
          {
            value: 'systems',
            label: text('systems'),
            count: format.count(choices.systems.length),
            content: <SystemsPanel {...panel} />,
          },
          {
            value: 'crews',
            label: text('crews'),
            count: format.count(choices.crews.length),
            content: <CrewsPanel {...panel} />,
          },
          { value: 'settings', label: text('settings'), content: <SettingsPanel {...panel} /> },
        ]}
      />
    </>
  );
}
