import { CHECKING_LEVELS, CRITICALITIES, type Criticality, type ShutdownSettings } from '@seatwell/contract';
import { useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useCommand } from '../../app/use-command.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { FieldGroup } from '../../ui/field-group.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { useAnnouncer } from '../../ui/toast.tsx';
import type { PanelProps } from './areas-panel.tsx';
import styles from './setup.module.css';

type Demand = ShutdownSettings['criticalities'][Criticality];
const demands = ['witnessPoint', 'measuredFlatness', 'relaxationPass', 'checkerFromOtherCompany'] as const;
const hours = [
  'faceAcceptanceLapses_h',
  'provisionalToolCleared_h',
  'relaxationPassAfter_h',
  'relaxationPassOverdue_h',
] as const;

/** What each criticality demands, and the times that rules read. A change needs a reason and is on the record. */
export function SettingsPanel({ shutdown }: PanelProps) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('setup');
  const trade = useTrade();
  const { toast } = useAnnouncer();
  const change = useCommand('settings-changed');
  const [settings, setSettings] = useState(shutdown.settings);
  const [reason, setReason] = useState('');
  const against = reasonAgainst(shutdown.actions, 'settings-changed');
  const changed = JSON.stringify(settings) !== JSON.stringify(shutdown.settings);
  const missing =
    against ?? (!changed ? text('nothing-changed') : reason.trim() === '' ? text('reason-needed') : undefined);
  const set = (letter: Criticality, part: Partial<Demand>) =>
    setSettings((current) => ({
      ...current,
      criticalities: { ...current.criticalities, [letter]: { ...current.criticalities[letter], ...part } },
    }));
  const save = () =>
    change.mutate(
      {
        subjectId: shutdown.shutdownId,
        payload: { settings: differing(settings, shutdown.settings), reason: reason.trim() },
      },
      {
        onSuccess: () => {
          setReason('');
          toast({ message: text('settings-saved') });
        },
      },
    );
  return (
    <div className={styles.panel}>
      <div className={styles.levels}>
        {CRITICALITIES.map((letter) => (
          <FieldGroup key={letter} legend={text('criticality', { letter })}>
            <Select
              label={text('checking-level')}
              value={settings.criticalities[letter].checkingLevel}
              onChange={(checkingLevel) => set(letter, { checkingLevel })}
              options={CHECKING_LEVELS.map((value) => ({ value, label: trade.word('checking', value) }))}
            />
            {demands.map((name) => (
              <Checkbox
                key={name}
                label={text(`demand-${name}`)}
                checked={settings.criticalities[letter][name]}
                onChange={(on) => set(letter, { [name]: on })}
              />
            ))}
          </FieldGroup>
        ))}
      </div>
      <div className={styles.row}>
        <NumberField
          label={text('sample-share')}
          unit="%"
          least={1}
          most={100}
          decimals={0}
          value={settings.sampleShare * 100}
          onChange={(percent) =>
            percent !== undefined && setSettings((current) => ({ ...current, sampleShare: percent / 100 }))
          }
        />
        {hours.map((name) => (
          <NumberField
            key={name}
            label={text(`time-${name}`)}
            unit="h"
            least={0.5}
            value={settings[name]}
            onChange={(value) => value !== undefined && setSettings((current) => ({ ...current, [name]: value }))}
          />
        ))}
      </div>
      <TextField label={text('reason')} lines={2} value={reason} onChange={setReason} />
      <ErrorNotice error={change.error} />
      <span>
        <Button kind="primary" busy={change.isPending} disabledReason={missing} onClick={save}>
          {text('save-settings')}
        </Button>
      </span>
    </div>
  );
}

/** Only what was changed: somebody else's change of another setting is not undone. */
function differing(now: ShutdownSettings, before: ShutdownSettings): Partial<ShutdownSettings> {
  return Object.fromEntries(
    Object.entries(now).filter(
      ([name, value]) => JSON.stringify(value) !== JSON.stringify(before[name as keyof ShutdownSettings]),
    ),
  );
}
