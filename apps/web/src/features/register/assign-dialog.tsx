import { CHECKING_LEVELS, type CheckingLevel, type ChoicesAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { useListCommand } from '../../app/use-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { Select } from '../../ui/select.tsx';
import { ListDialog } from './list-dialog.tsx';
import { listRowsWith } from './list-rows.ts';
import type { SelectedJoint } from './selection.ts';

interface Props {
  readonly joints: readonly SelectedJoint[];
  readonly choices: ChoicesAnswer;
  readonly onClose: () => void;
}

const none = 'none';
const keep = 'keep';

/** Crew, day and level of checking of a list of joints. */
export function AssignDialog({ joints, choices, onClose }: Props) {
  const text = useText('register');
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const assign = useListCommand('make-assigned');
  // What is not loaded is not known, and must be said: nothing is cleared by an empty field.
  const known = joints.every((joint) => joint.planned !== undefined);
  const [crew, setCrew] = useState(known ? keep : '');
  const [day, setDay] = useState('');
  const [level, setLevel] = useState<CheckingLevel | ''>('');
  const send = () =>
    assign.mutate({
      subjectId: shutdownId,
      mode: 'each',
      rows: listRowsWith(joints, ({ planned }) => ({
        crewId: crew === keep ? (planned?.crewId ?? null) : crew === none ? null : crew,
        plannedOn: day === '' ? (planned?.plannedOn ?? null) : day,
        ...(level === '' ? {} : { checkingLevel: level }),
      })),
    });
  const nothing = crew === keep && day === '' && level === '';
  const missing =
    crew === ''
      ? text('crew-needed')
      : !known && day === ''
        ? text('day-needed')
        : nothing
          ? text('assign-nothing')
          : undefined;
  return (
    <ListDialog
      title={text('assign-crew-title', { count: joints.length })}
      joints={joints}
      answer={assign.data}
      error={assign.error}
      busy={assign.isPending}
      sendLabel={text('save')}
      missing={missing}
      onSend={send}
      onClose={onClose}
    >
      <Select
        label={text('crew')}
        value={crew}
        onChange={setCrew}
        options={[
          ...(known ? [{ value: keep, label: text('keep-crew') }] : []),
          ...choices.crews.map((each) => ({ value: each.crewId, label: each.code, detail: each.company })),
          { value: none, label: text('no-crew') },
        ]}
      />
      <DateField label={text('day')} value={day} onChange={setDay} hint={known ? text('day-empty') : undefined} />
      <Select
        label={text('checking-raise')}
        optional
        value={level}
        onChange={setLevel}
        options={CHECKING_LEVELS.map((value) => ({ value, label: trade.word('checking', value) }))}
      />
    </ListDialog>
  );
}
