import { type QuantityName, TOOL_KINDS, type ToolRow } from '@seatwell/contract';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';

type Kind = ToolRow['kind'];

/** What the scale of a kind of tool is in. */
export function scaleOf(kind: Kind): { readonly unit: ToolRow['scaleUnit']; readonly quantity: QuantityName } {
  if (kind === 'torque-wrench' || kind === 'hydraulic-wrench') return { unit: 'N·m', quantity: 'torque' };
  if (kind === 'length-gauge') return { unit: 'mm', quantity: 'gap' };
  return { unit: 'MPa', quantity: 'pressure' };
}

/** Registers a tool, gauge or pump with its scale; it may be used once a calibration is recorded. */
export function RegisterToolDialog({ onClose }: { onClose: () => void }) {
  const text = useText('tools');
  const trade = useTrade();
  const format = useFormat();
  const register = useSiteCommand('tool-registered');
  const [toolId] = useState(newId);
  const [tag, setTag] = useState('');
  const [kind, setKind] = useState<Kind | ''>('');
  const [maker, setMaker] = useState('');
  const [minimum, setMinimum] = useState<number>();
  const [maximum, setMaximum] = useState<number>();
  const [division, setDivision] = useState<number>();
  const [area, setArea] = useState<number>();
  const scale = kind === '' ? undefined : scaleOf(kind);
  const held = (value: number | undefined) =>
    value === undefined || scale === undefined ? null : format.toHeld(scale.quantity, value);
  let missing: string | undefined;
  if (tag.trim() === '' || kind === '' || maximum === undefined) missing = text('register-missing');
  else if (kind === 'tensioner' && (area === undefined || area <= 0)) missing = text('area-missing');
  const send = () => {
    const scaleMaximum = held(maximum);
    if (kind === '' || scale === undefined || scaleMaximum === null || missing !== undefined) return;
    register.mutate(
      {
        subjectId: toolId,
        payload: {
          toolId,
          tag,
          kind,
          maker: maker.trim() === '' ? null : maker,
          scaleMinimum: held(minimum),
          scaleMaximum,
          scaleUnit: scale.unit,
          scaleDivision: held(division),
          ...(kind === 'tensioner' ? { hydraulicArea_mm2: area ?? null } : {}),
        },
      },
      { onSuccess: onClose },
    );
  };
  return (
    <FormDialog
      title={text('register')}
      sendLabel={text('save')}
      missing={missing}
      busy={register.isPending}
      error={register.error}
      onSend={send}
      onClose={onClose}
    >
      <TextField label={text('tag')} value={tag} onChange={setTag} />
      <Select
        label={text('kind')}
        value={kind}
        onChange={setKind}
        options={TOOL_KINDS.map((value) => ({ value, label: trade.word('tool', value) }))}
      />
      <TextField label={text('maker')} optional value={maker} onChange={setMaker} />
      {scale && (
        <>
          <NumberField
            label={text('scale-minimum')}
            optional
            unit={format.unit(scale.quantity)}
            value={minimum}
            onChange={setMinimum}
          />
          <NumberField
            label={text('scale-maximum')}
            unit={format.unit(scale.quantity)}
            value={maximum}
            onChange={setMaximum}
          />
          <NumberField
            label={text('scale-division')}
            optional
            unit={format.unit(scale.quantity)}
            value={division}
            onChange={setDivision}
          />
          {kind === 'tensioner' && (
            <NumberField
              label={text('hydraulic-area')}
              hint={text('hydraulic-area-hint')}
              unit="mm²"
              least={0}
              value={area}
              onChange={setArea}
            />
          )}
        </>
      )}
    </FormDialog>
  );
}
