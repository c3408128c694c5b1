import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { proceduresQuery } from '../../app/reads.ts';
import { useListCommand } from '../../app/use-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { ListDialog } from './list-dialog.tsx';
import { listRows } from './list-rows.ts';
import type { SelectedJoint } from './selection.ts';

/** The procedure of a list of joints: only approved revisions are offered. */
export function ProcedureDialog({ joints, onClose }: { joints: readonly SelectedJoint[]; onClose: () => void }) {
  const text = useText('register');
  const shutdownId = useShutdownId();
  const procedures = useQuery(proceduresQuery);
  const assign = useListCommand('procedure-assigned');
  const [chosen, setChosen] = useState('');
  const approved = (procedures.data?.rows ?? []).filter((row) => row.state === 'approved');
  const procedure = approved.find((row) => `${row.procedureId} ${row.revision}` === chosen);
  const send = () => {
    if (!procedure) return;
    const payload = { procedureId: procedure.procedureId, revision: procedure.revision };
    assign.mutate({ subjectId: shutdownId, mode: 'each', rows: listRows(joints, payload) });
  };
  return (
    <ListDialog
      title={text('assign-procedure-title', { count: joints.length })}
      joints={joints}
      answer={assign.data}
      error={assign.error}
      busy={assign.isPending}
      sendLabel={text('assign-procedure')}
      missing={procedure ? undefined : text('procedure-needed')}
      onSend={send}
      onClose={onClose}
    >
      <ErrorNotice error={procedures.error} />
      {procedures.data && approved.length === 0 && <p>{text('procedure-none')}</p>}
      <Select
        label={text('procedure')}
        value={chosen}
        onChange={setChosen}
        options={approved.map((row) => ({
          value: `${row.procedureId} ${row.revision}`,
          label: text('procedure-revision', { code: row.code, revision: row.revision }),
          detail: row.title,
        }))}
      />
    </ListDialog>
  );
}
