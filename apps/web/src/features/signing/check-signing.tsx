import type { CheckingLevel, MyJointRow } from '@seatwell/contract';
import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { ListSigning } from './list-signing.tsx';
import type { SignRow } from './sign-row.ts';

const levelOf = (joints: readonly MyJointRow[], row: SignRow): CheckingLevel =>
  (joints.find((joint) => joint.jointId === row.jointId)?.waitsFor.data.level as CheckingLevel | undefined) ?? 'every';

/** QC's check, or the chargehand's: accepted or rejected, each joint at the level that it waits for. */
export function CheckSigning({ rows, joints }: { rows: readonly SignRow[]; joints: readonly MyJointRow[] }) {
  const text = useText('signing');
  const [outcome, setOutcome] = useState<'accepted' | 'rejected' | ''>('');
  const [reason, setReason] = useState('');
  const rejects = outcome === 'rejected';
  let missing: string | undefined;
  if (outcome === '') missing = text('missing-outcome');
  else if (rejects && reason.trim() === '') missing = text('missing-rejection');
  return (
    <>
      <RadioCards
        label={text('check-outcome')}
        value={outcome}
        options={[
          { value: 'accepted' as const, label: text('check-accept'), detail: text('check-accept-detail') },
          { value: 'rejected' as const, label: text('check-reject'), detail: text('check-reject-detail') },
        ]}
        onChange={setOutcome}
      />
      {rejects && <TextField label={text('rejection-reason')} lines={2} value={reason} onChange={setReason} />}
      <ListSigning
        type="checked"
        rows={rows}
        payloadOf={(row) => ({
          level: levelOf(joints, row),
          outcome: rejects ? 'rejected' : 'accepted',
          reason: rejects ? reason.trim() : null,
        })}
        title={text('title-check')}
        meaning={text(rejects ? 'meaning-reject' : 'meaning-check')}
        label={text(rejects ? 'reject-listed' : 'accept-listed')}
        roles={['inspector', 'chargehand']}
        missing={missing}
        danger={rejects}
      />
    </>
  );
}
