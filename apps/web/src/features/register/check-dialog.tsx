import { CHECKING_LEVELS, type CheckingLevel } from '@seatwell/contract';
import { useState } from 'react';
import { useListCommand } from '../../app/use-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { ListDialog } from './list-dialog.tsx';
import type { SelectedJoint } from './selection.ts';
import { SignedList } from './signed-list.tsx';

/** The check of a list of joints under one signature. */
export function CheckDialog({ joints, onClose }: { joints: readonly SelectedJoint[]; onClose: () => void }) {
  const text = useText('register');
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const check = useListCommand('checked');
  const [level, setLevel] = useState<CheckingLevel | ''>('');
  const [signing, setSigning] = useState(false);
  if (signing && level !== '') {
    return (
      <SignedList
        title={text('check-title')}
        meaning={text('check-meaning', { level: trade.word('checking', level) })}
        signLabel={text('sign-check')}
        roles={level === 'chargehand' ? ['chargehand', 'inspector'] : ['inspector', 'chargehand']}
        joints={joints}
        command={check}
        subjectId={shutdownId}
        payload={{ level, outcome: 'accepted', reason: null }}
        onClose={onClose}
      />
    );
  }
  return (
    <ListDialog
      title={text('check-title')}
      joints={joints}
      answer={undefined}
      error={null}
      busy={false}
      sendLabel={text('release-next')}
      missing={level === '' ? text('check-level-needed') : undefined}
      onSend={() => setSigning(true)}
      onClose={onClose}
    >
      <Select
        label={text('check-level')}
        value={level}
        onChange={setLevel}
        options={CHECKING_LEVELS
          // The crew signs its own check on its joints, two by name; a witness signs beside it.
          .filter((value) => value !== 'witness' && value !== 'self')
          .map((value) => ({ value, label: trade.word('checking', value) }))}
      />
    </ListDialog>
  );
}
