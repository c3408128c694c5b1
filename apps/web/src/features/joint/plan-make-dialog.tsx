import {
  type ChoicesAnswer,
  type JointPage,
  MAKE_PURPOSES,
  PROOF_WAYS,
  type ProofWay,
  WORK_SCOPES,
} from '@seatwell/contract';
import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { Select } from '../../ui/select.tsx';
import { DecisionDialog } from './decision-dialog.tsx';
import { jointState } from './shown-make.ts';

interface Props {
  readonly page: JointPage;
  readonly choices: ChoicesAnswer;
  readonly onClose: () => void;
}

const none = 'none';

/** One more closing of the joint: after a spade, after a test, or when it is opened again. */
export function PlanMakeDialog({ page, choices, onClose }: Props) {
  const text = useText('joint');
  const trade = useTrade();
  const plan = useCommand('make-planned');
  const joint = jointState(page);
  const number = Math.max(0, ...joint.makes.map((make) => make.number)) + 1;
  const [purpose, setPurpose] = useState<(typeof MAKE_PURPOSES)[number]>('final');
  const [workScope, setWorkScope] = useState<(typeof WORK_SCOPES)[number]>('break-and-remake');
  const [proof, setProof] = useState<ProofWay>(joint.makes.at(-1)?.proof ?? 'hydrotest');
  const [crewId, setCrewId] = useState(none);
  const [packId, setPackId] = useState(none);
  const [plannedOn, setPlannedOn] = useState('');
  const send = () => {
    const makeId = newId();
    plan.mutate(
      {
        subjectId: joint.jointId,
        versionSeen: joint.version,
        payload: {
          makeId,
          number,
          purpose,
          workScope,
          clampedParts: null,
          gasket: null,
          checkingLevel: null,
          proof,
          plannedOn: plannedOn === '' ? null : plannedOn,
          crewId: crewId === none ? null : crewId,
          packs: packId === none ? [] : [{ packId, role: 'inside' }],
        },
      },
      { onSuccess: onClose },
    );
  };
  return (
    <DecisionDialog
      title={text('plan-make-title', { tag: joint.tag, number })}
      description={text('plan-make-detail')}
      sendLabel={text('do-make-planned')}
      busy={plan.isPending}
      error={plan.error}
      onClose={onClose}
      onSend={send}
    >
      <Select
        label={text('purpose')}
        value={purpose}
        onChange={setPurpose}
        options={MAKE_PURPOSES.map((value) => ({ value, label: trade.word('purpose', value) }))}
      />
      <Select
        label={text('work-scope')}
        value={workScope}
        onChange={setWorkScope}
        options={WORK_SCOPES.map((value) => ({ value, label: trade.word('scope', value) }))}
      />
      <Select
        label={text('proof')}
        value={proof}
        onChange={setProof}
        options={PROOF_WAYS.map((value) => ({ value, label: trade.word('proof', value) }))}
      />
      <Select
        label={text('crew')}
        value={crewId}
        onChange={setCrewId}
        options={[
          { value: none, label: text('none') },
          ...choices.crews.map((crew) => ({ value: crew.crewId, label: crew.code, detail: crew.company })),
        ]}
      />
      <Select
        label={text('pack')}
        value={packId}
        onChange={setPackId}
        options={[
          { value: none, label: text('none') },
          ...choices.packs.map((pack) => ({ value: pack.packId, label: pack.number })),
        ]}
      />
      <DateField label={text('planned-on')} optional value={plannedOn} onChange={setPlannedOn} />
    </DecisionDialog>
  );
}
