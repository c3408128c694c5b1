import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import type { TargetDraft } from './target-draft.ts';

const ways = ['pattern', 'computed-loads'] as const;

interface Props {
  readonly value: TargetDraft;
  readonly onChange: (value: TargetDraft) => void;
}

/** How the joint is tightened: by the pattern of its procedure, or every step with its own load. */
export function WayFields({ value, onChange }: Props) {
  const text = useText('engineering');
  const format = useFormat();
  const { toolDivision_Nm } = value;
  return (
    <>
      <RadioCards
        label={text('way')}
        value={value.way}
        onChange={(way) => onChange({ ...value, way })}
        options={ways.map((each) => ({ value: each, label: text(`way-${each}`), detail: text(`way-${each}-detail`) }))}
      />
      {value.way === 'computed-loads' && (
        <>
          <NumberField
            label={text('tool-division')}
            unit={format.unit('torque')}
            hint={text('tool-division-hint')}
            least={0}
            value={toolDivision_Nm === undefined ? undefined : format.toShown('torque', toolDivision_Nm)}
            onChange={(shown) =>
              onChange({ ...value, toolDivision_Nm: shown === undefined ? undefined : format.toHeld('torque', shown) })
            }
          />
          <Select
            label={text('set-values-most')}
            value={String(value.setValues)}
            onChange={(setValues) => onChange({ ...value, setValues: Number(setValues) })}
            options={[2, 3, 4].map((count) => ({ value: String(count), label: format.count(count) }))}
          />
        </>
      )}
    </>
  );
}
