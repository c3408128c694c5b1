import { PROOF_WAYS, type ProofWay } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { choicesQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';

const none = 'none';

/** Plans a test pack; its joints are put into it from the register or the import. */
export function PlanPackDialog({ onClose }: { onClose: () => void }) {
  const text = useText('packs');
  const trade = useTrade();
  const format = useFormat();
  const shutdownId = useShutdownId();
  const choices = useQuery(choicesQuery(shutdownId));
  const plan = useCommand('pack-planned');
  const [packId] = useState(newId);
  const [number, setNumber] = useState('');
  const [way, setWay] = useState<ProofWay | ''>('');
  const [medium, setMedium] = useState('');
  const [pressure, setPressure] = useState<number>();
  const [hold, setHold] = useState<number>();
  const [area, setArea] = useState(none);
  const [system, setSystem] = useState(none);
  const [day, setDay] = useState('');
  const complete = number.trim() !== '' && way !== '' && medium.trim() !== '' && pressure && hold;
  const send = () => {
    if (way === '' || pressure === undefined || hold === undefined) return;
    plan.mutate(
      {
        subjectId: packId,
        payload: {
          packId,
          number,
          systemId: system === none ? null : system,
          areaId: area === none ? null : area,
          way,
          medium,
          pressure_MPa: format.toHeld('pressure', pressure),
          pressureAsEntered: { value: pressure, unit: format.unit('pressure') },
          hold_min: hold,
          plannedOn: day === '' ? null : day,
        },
      },
      { onSuccess: onClose },
    );
  };
  return (
    <FormDialog
      title={text('plan-pack')}
      sendLabel={text('save')}
      missing={complete ? undefined : text('plan-missing')}
      busy={plan.isPending}
      error={plan.error ?? choices.error}
      onSend={send}
      onClose={onClose}
    >
      <TextField label={text('number')} value={number} onChange={setNumber} />
      <Select
        label={text('way')}
        value={way}
        onChange={setWay}
        options={PROOF_WAYS.map((value) => ({ value, label: trade.word('proof', value) }))}
      />
      <TextField label={text('medium')} value={medium} onChange={setMedium} />
      <NumberField label={text('pressure')} unit={format.unit('pressure')} value={pressure} onChange={setPressure} />
      <NumberField label={text('hold')} unit="min" value={hold} onChange={setHold} />
      <Select
        label={text('area')}
        value={area}
        onChange={setArea}
        options={[
          { value: none, label: text('no-area') },
          ...(choices.data?.areas ?? []).map((each) => ({ value: each.areaId, label: each.name })),
        ]}
      />
      <Select
        label={text('system')}
        value={system}
        onChange={setSystem}
        options={[
          { value: none, label: text('no-system') },
          ...(choices.data?.systems ?? []).map((each) => ({
            value: each.systemId,
            label: each.code,
            detail: each.name,
          })),
        ]}
      />
      <DateField label={text('planned-on')} optional value={day} onChange={setDay} />
    </FormDialog>
  );
}
