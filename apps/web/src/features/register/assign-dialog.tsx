import type { CheckingLevel, ChoicesAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { checkingLevels } from '../../app/trade-lists.ts';
import { useListCommand } from '../../app/use-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { Select } from '../../ui/select.tsx';
import { ListDialog } from './list-dialog.tsx';
import { listRows } from './list-rows.ts';
import type { SelectedJoint } from './selection.ts';

interface Props {
  readonly joints: readonly SelectedJoint[];
  readonly choices: ChoicesAnswer;
  readonly onClose: () => void;
}

const none = 'none';

/** Crew, day and level of checking of a list of joints. */
export function AssignDialog({ joints, choices, onClose }: Props) {
  const text = useText('register');
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const assign = useListCommand('make-assigned');
  const [crew, setCrew] = useState('');
  const [day, setDay] = useState('');
  const [level, setLevel] = useState<CheckingLevel | ''>('');
  const send = () =>
    assign.mutate({
      subjectId: shutdownId,
      mode: 'each',
      rows: listRows(joints, {
        crewId: crew === none || crew === '' ? null : crew,
        plannedOn: day === '' ? null : day,
        ...(level === '' ? {} : { checkingLevel: level }),
      }),
    });
  return (
    <ListDialog
      title={text('assign-crew-title', { count: joints.length })}
      joints={joints}
      answer={assign.data}
      error={assign.error}
      busy={assign.isPending}
      sendLabel={text('save')}
      missing={crew === '' ? text('crew-needed') : undefined}
      onSend={send}
      onClose={onClose}
    >
      <Select
        label={text('crew')}
        value={crew}
        onChange={setCrew}
        options={[
          ...choices.crews.map((each) => ({ value: each.crewId, label: each.code, detail: each.company })),
          { value: none, label: text('no-crew') },
        ]}
      />
      <DateField label={text('day')} value={day} onChange={setDay} hint={text('day-empty')} />
      <Select
        label={text('checking-raise')}
        optional
        value={level}
        onChange={setLevel}
        options={checkingLevels.map((value) => ({ value, label: trade.word('checking', value) }))}
      />
    </ListDialog>
  );
}
