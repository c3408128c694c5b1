import type { JointPage, MakeAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { DecisionDialog } from './decision-dialog.tsx';
import { stateOf } from './shown-make.ts';

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly onClose: () => void;
}

const points = ['tightening', 'test'] as const;
type Point = (typeof points)[number];

/** The point that is signed next: the tightening until it was witnessed or waived, then the test. */
function nextPoint(page: JointPage, make: MakeAnswer): Point {
  const state = stateOf(page, make);
  const pressed = state?.stage === 'proven' || state?.workScope === 'test-only';
  return pressed || state?.witnessed.includes('tightening') === true ? 'test' : 'tightening';
}

/** What the client's witness saw, signed. */
export function WitnessDialog({ page, make, onClose }: Props) {
  return make ? <PointDialog page={page} make={make} waived={false} onClose={onClose} /> : null;
}

/** The client's witness does without seeing it, with a reason, signed. */
export function WaiveDialog({ page, make, onClose }: Props) {
  return make ? <PointDialog page={page} make={make} waived onClose={onClose} /> : null;
}

function PointDialog({ page, make, waived, onClose }: Props & { make: MakeAnswer; waived: boolean }) {
  const text = useText('joint');
  const witness = useCommand('witnessed');
  const waive = useCommand('witness-waived');
  const [point, setPoint] = useState(nextPoint(page, make));
  const { jointId, tag, version } = page.joint;
  const command = { subjectId: jointId, makeId: make.makeId, versionSeen: version };
  return (
    <DecisionDialog
      title={text(waived ? 'waive-title' : 'witness-title', { tag })}
      sendLabel={text('sign')}
      {...(waived ? { reasonLabel: text('reason') } : {})}
      meaning={text(waived ? `waive-meaning-${point}` : `witness-meaning-${point}`, { tag })}
      roles={['witness']}
      busy={witness.isPending || waive.isPending}
      error={witness.error ?? waive.error}
      onClose={onClose}
      onSend={({ reason, signature }) =>
        waived
          ? waive.mutate({ ...command, signature, payload: { point, reason } }, { onSuccess: onClose })
          : witness.mutate({ ...command, signature, payload: { point, remark: null } }, { onSuccess: onClose })
      }
    >
      <Select
        label={text('witness-point')}
        value={point}
        onChange={setPoint}
        options={points.map((value) => ({ value, label: text(`witness-point-${value}`) }))}
      />
    </DecisionDialog>
  );
}
