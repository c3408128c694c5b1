import type { ChoicesAnswer, ShutdownAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import { ListingForm } from './listing-form.tsx';
import styles from './setup.module.css';

export interface PanelProps {
  readonly shutdown: ShutdownAnswer;
  readonly choices: ChoicesAnswer;
}

/** Areas of the shutdown: where one walks. */
export function AreasPanel({ shutdown, choices }: PanelProps) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('setup');
  const add = useCommand('area-listed');
  const reason = reasonAgainst([...choices.actions, ...shutdown.actions], 'area-listed');
  return (
    <div className={styles.panel}>
      <ListingForm
        addLabel={text('add-area')}
        adding={add}
        against={reason}
        onAdd={(named, empty) => {
          const areaId = newId();
          add.mutate({ subjectId: areaId, payload: { areaId, ...named } }, { onSuccess: empty });
        }}
      />
      <Table
        caption={text('areas')}
        captionHidden
        rows={choices.areas}
        rowKey={(area) => area.areaId}
        empty={text('no-area')}
        columns={[
          { key: 'code', header: text('code'), rowHeader: true, cell: (area) => area.code },
          {
            key: 'name',
            header: text('name'),
            cell: (area) => (
              <Link href={addresses.register(shutdown.shutdownId, { area: area.areaId })}>{area.name}</Link>
            ),
          },
        ]}
      />
    </div>
  );
}
