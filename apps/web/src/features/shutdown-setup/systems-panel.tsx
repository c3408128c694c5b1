import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { Table } from '../../ui/table.tsx';
import type { PanelProps } from './areas-panel.tsx';
import { ListingForm } from './listing-form.tsx';
import styles from './setup.module.css';

const none = 'none';

/** Systems of the shutdown: what is handed over as one. */
export function SystemsPanel({ shutdown, choices }: PanelProps) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('setup');
  const add = useCommand('system-listed');
  const [areaId, setAreaId] = useState(none);
  const reason = reasonAgainst([...choices.actions, ...shutdown.actions], 'system-listed');
  const areaName = (id: string | null) => choices.areas.find((area) => area.areaId === id)?.name ?? '';
  return (
    <div className={styles.panel}>
      <ListingForm
        addLabel={text('add-system')}
        adding={add}
        against={reason}
        onAdd={(named, empty) => {
          const systemId = newId();
          const payload = { systemId, areaId: areaId === none ? null : areaId, ...named };
          add.mutate({ subjectId: systemId, payload }, { onSuccess: empty });
        }}
      >
        <Select
          label={text('area')}
          value={areaId}
          onChange={setAreaId}
          options={[
            { value: none, label: text('several-areas') },
            ...choices.areas.map((area) => ({ value: area.areaId, label: area.name, detail: area.code })),
          ]}
        />
      </ListingForm>
      <Table
        caption={text('systems')}
        captionHidden
        rows={choices.systems}
        rowKey={(system) => system.systemId}
        empty={text('no-system')}
        columns={[
          { key: 'code', header: text('code'), rowHeader: true, cell: (system) => system.code },
          { key: 'name', header: text('name'), cell: (system) => system.name },
          { key: 'area', header: text('area'), cell: (system) => areaName(system.areaId) || text('several-areas') },
        ]}
      />
    </div>
  );
}
