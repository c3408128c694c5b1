import type { ChoicesAnswer, ShutdownAnswer } from '@seatwell/contract';
import { type FormEvent, useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { newId } from '../../app/send-command.ts';
import { reasonAgainst } from '../../app/sign.ts';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './setup.module.css';

export interface PanelProps {
  readonly shutdown: ShutdownAnswer;
  readonly choices: ChoicesAnswer;
}

/** Areas of the shutdown: where one walks. */
export function AreasPanel({ shutdown, choices }: PanelProps) {
  const text = useText('setup');
  const add = useCommand('area-listed');
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const reason = reasonAgainst([...choices.actions, ...shutdown.actions], 'area-listed');
  const complete = code.trim() !== '' && name.trim() !== '';
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!complete || reason || add.isPending) return;
    const areaId = newId();
    add.mutate(
      { subjectId: areaId, payload: { areaId, code: code.trim(), name: name.trim() } },
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
        <Button
          kind="primary"
          type="submit"
          busy={add.isPending}
          disabledReason={reason ?? (complete ? undefined : text('code-and-name'))}
        >
          {text('add-area')}
        </Button>
      </form>
      <ErrorNotice error={add.error} />
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
