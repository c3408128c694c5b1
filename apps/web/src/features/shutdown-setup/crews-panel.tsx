import type { ChoicesAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Table } from '../../ui/table.tsx';
import type { PanelProps } from './areas-panel.tsx';
import { CrewDialog } from './crew-dialog.tsx';
import styles from './setup.module.css';

type Crew = ChoicesAnswer['crews'][number];

/** Crews with their company, shift and people. */
export function CrewsPanel({ shutdown, choices }: PanelProps) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('setup');
  const [edited, setEdited] = useState<Crew | 'new' | null>(null);
  const reason = reasonAgainst([...choices.actions, ...shutdown.actions], 'crew-listed');
  return (
    <div className={styles.panel}>
      <span>
        <Button kind="primary" disabledReason={reason} onClick={() => setEdited('new')}>
          {text('add-crew')}
        </Button>
      </span>
      <Table
        caption={text('crews')}
        captionHidden
        rows={choices.crews}
        rowKey={(crew) => crew.crewId}
        empty={text('no-crew')}
        columns={[
          { key: 'code', header: text('code'), rowHeader: true, cell: (crew) => crew.code },
          { key: 'company', header: text('company'), cell: (crew) => crew.company },
          { key: 'shift', header: text('shift'), cell: (crew) => crew.shift ?? '' },
          {
            key: 'people',
            header: text('people'),
            cell: (crew) => crew.persons.map((person) => person.name ?? text('name-erased')).join(', '),
          },
          {
            key: 'change',
            header: text('change'),
            cell: (crew) => (
              <Button
                kind="quiet"
                disabledReason={reason}
                label={text('change-crew', { code: crew.code })}
                onClick={() => setEdited(crew)}
              >
                {text('change')}
              </Button>
            ),
          },
        ]}
      />
      {edited && (
        <CrewDialog crew={edited === 'new' ? undefined : edited} shutdown={shutdown} onClose={() => setEdited(null)} />
      )}
    </div>
  );
}
