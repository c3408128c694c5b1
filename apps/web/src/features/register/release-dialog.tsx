import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { permitsQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useCommand, useListCommand } from '../../app/use-command.ts';
import { useCurrentShutdown, useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { ListDialog } from './list-dialog.tsx';
import { emptyPermit, type PermitDraft, PermitFields, permitMissing, permitValidity } from './permit-fields.tsx';
import type { SelectedJoint } from './selection.ts';
import { SignedList } from './signed-list.tsx';

const fresh = 'new';

/** Operations releases a list of joints to be broken under one permit and one signature. */
export function ReleaseDialog({ joints, onClose }: { joints: readonly SelectedJoint[]; onClose: () => void }) {
  const text = useText('register');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const permits = useQuery(permitsQuery(shutdownId));
  const record = useCommand('permit-recorded');
  const release = useListCommand('break-released');
  const timeZone = useCurrentShutdown()?.timeZone ?? 'UTC';
  const [chosen, setChosen] = useState('');
  const [draft, setDraft] = useState<PermitDraft>(() => emptyPermit(timeZone));
  const [signing, setSigning] = useState<{ permitId: string; number: string } | null>(null);
  const inForce = (permits.data?.rows ?? []).filter((permit) => permit.inForce);

  const goOn = async () => {
    const known = inForce.find((permit) => permit.permitId === chosen);
    if (known) return setSigning(known);
    const permitId = newId();
    const { number, isolationReference } = draft;
    try {
      await record.mutateAsync({
        subjectId: permitId,
        payload: {
          permitId,
          number,
          isolationReference: isolationReference === '' ? null : isolationReference,
          jointIds: joints.map((joint) => joint.jointId),
          ...permitValidity(draft, timeZone),
        },
      });
      setSigning({ permitId, number });
    } catch {
      // shown by the mutation's error below
    }
  };

  if (signing) {
    return (
      <SignedList
        title={text('release-title')}
        meaning={text('release-meaning', { permit: signing.number })}
        signLabel={text('sign-release')}
        roles={['operations']}
        joints={joints}
        command={release}
        subjectId={shutdownId}
        payload={{ permitId: signing.permitId, remark: null }}
        onClose={onClose}
      />
    );
  }
  const missing = permitMissing(draft);
  const reason = chosen === '' ? text('permit-needed') : chosen === fresh && missing ? text(missing) : undefined;
  return (
    <ListDialog
      title={text('release-title')}
      joints={joints}
      answer={undefined}
      error={record.error}
      busy={record.isPending}
      sendLabel={text('release-next')}
      missing={reason}
      onSend={() => void goOn()}
      onClose={onClose}
    >
      <ErrorNotice error={permits.error} />
      <Select
        label={text('permit')}
        value={chosen}
        onChange={setChosen}
        options={[
          ...inForce.map((permit) => ({
            value: permit.permitId,
            label: permit.number,
            detail: text('permit-valid-to', { until: format.dayTime(permit.validUntil) }),
          })),
          { value: fresh, label: text('permit-new') },
        ]}
      />
      {chosen === fresh && <PermitFields value={draft} onChange={setDraft} timeZone={timeZone} />}
    </ListDialog>
  );
}
