import type { JointPage, MakeAnswer } from '@seatwell/contract';
import { RULES } from '@seatwell/workflow';
import { useState } from 'react';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { DecisionDialog } from './decision-dialog.tsx';

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly onClose: () => void;
}

/** Lets one stated rule pass for this make, with a reason that is printed. Rules with a floor are not offered. */
export function DeviationDialog({ page, make, onClose }: Props) {
  const text = useText('joint');
  const accept = useCommand('deviation-accepted');
  const [rule, setRule] = useState('');
  const [until, setUntil] = useState('');
  if (!make) return null;
  const offered = RULES.filter((each) => !each.floor && each.severity[page.joint.criticality] === 'reason');
  const sentence = offered.find((each) => each.code === rule)?.sentence ?? '';
  return (
    <DecisionDialog
      title={text('deviation-title', { tag: page.joint.tag })}
      description={text('deviation-detail')}
      sendLabel={text('sign')}
      reasonLabel={text('reason')}
      meaning={text('deviation-meaning', { tag: page.joint.tag, rule: sentence })}
      roles={['engineer', 'inspector']}
      missing={rule === '' ? text('rule-needed') : undefined}
      busy={accept.isPending}
      error={accept.error}
      onClose={onClose}
      onSend={({ reason, signature }) =>
        accept.mutate(
          {
            subjectId: page.joint.jointId,
            makeId: make.makeId,
            versionSeen: page.joint.version,
            signature,
            payload: { rule, reason, until: until === '' ? null : until },
          },
          { onSuccess: onClose },
        )
      }
    >
      <Combobox
        label={text('rule')}
        value={rule}
        onChange={setRule}
        options={offered.map((each) => ({ value: each.code, label: each.sentence, detail: each.code }))}
      />
      <DateField label={text('until')} optional value={until} onChange={setUntil} />
    </DecisionDialog>
  );
}
