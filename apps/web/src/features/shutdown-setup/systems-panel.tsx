import { type FormEvent, useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { newId } from '../../app/send-command.ts';
import { reasonAgainst } from '../../app/sign.ts';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Select } from '../../ui/select.tsx';
import { Table } from '../../ui/table.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { PanelProps } from './areas-panel.tsx';
import styles from './setup.module.css';

const none = 'none';

/** Systems of the shutdown: what is handed over as one. */
export function SystemsPanel({ shutdown, choices }: PanelProps) {
  const text = useText('setup');
  const add = useCommand('system-listed');
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const [areaId, setAreaId] = useState(none);
  const reason = reasonAgainst([...choices.actions, ...shutdown.actions], 'system-listed');
  const complete = code.trim() !== '' && name.trim() !== '';
  const areaName = (id: string | null) => choices.areas.find((area) => area.areaId === id)?.name ?? '';
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!complete || reason || add.isPending) return;
    const systemId = newId();
    add.mutate(
      {
        subjectId: systemId,
        payload: { systemId, areaId: areaId === none ? null : areaId, code: code.trim(), name: name.trim() },
      },
      {
        onSuccess: () => {
          setCode('');
          setName('');
        },
      },
    );
  };
  return (
    <div className={styles.panel}>
      <form className={styles.row} onSubmit={submit} noValidate>
        <TextField label={text('code')} value={code} onChange={setCode} />
        <TextField label={text('name')} value={name} onChange={setName} />
        <Select
          label={text('area')}
          value={areaId}
          onChange={setAreaId}
          options={[
            { value: none, label: text('several-areas') },
            ...choices.areas.map((area) => ({ value: area.areaId, label: area.name, detail: area.code })),
          ]}
        />
        <Button
          kind="primary"
          type="submit"
          busy={add.isPending}
          disabledReason={reason ?? (complete ? undefined : text('code-and-name'))}
        >
          {text('add-system')}
        </Button>
      </form>
      <ErrorNotice error={add.error} />
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
