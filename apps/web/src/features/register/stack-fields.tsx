import { type ClampedPart, PART_KINDS } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import styles from './joint-form.module.css';
import { type DraftProps, JointFieldGroup } from './joint-form.tsx';

const mostParts = 12;

/** What the bolts clamp, in order from the viewing side: stud length, faces and gaskets follow from it. */
export function StackFields({ draft, onChange }: DraftProps) {
  const text = useText('jointForm');
  const trade = useTrade();
  const format = useFormat();
  const parts = draft.clampedParts;
  const set = (index: number, part: Partial<ClampedPart>) =>
    onChange({ clampedParts: parts.map((each, at) => (at === index ? { ...each, ...part } : each)) });
  return (
    <JointFieldGroup legend={text('stack')}>
      {parts.map((part, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: parts of a stack are told apart by their place
        <div key={index} className={styles.part}>
          <Select
            label={text('part', { number: index + 1 })}
            value={part.kind}
            onChange={(kind) => set(index, { kind })}
            options={PART_KINDS.map((value) => ({ value, label: trade.word('part', value) }))}
          />
          <NumberField
            label={text('part-thickness', { number: index + 1 })}
            optional
            unit={format.unit('length')}
            value={part.thickness_mm === null ? undefined : format.toShown('length', part.thickness_mm)}
            onChange={(shown) =>
              set(index, { thickness_mm: shown === undefined ? null : format.toHeld('length', shown) })
            }
          />
        </div>
      ))}
      <div className={styles.whole}>
        <Button
          kind="quiet"
          disabledReason={parts.length >= mostParts ? text('parts-most', { most: mostParts }) : undefined}
          onClick={() => onChange({ clampedParts: [...parts, { kind: 'flange', thickness_mm: null, note: null }] })}
        >
          {text('part-add')}
        </Button>
        {parts.length > 0 && (
          <Button kind="quiet" onClick={() => onChange({ clampedParts: parts.slice(0, -1) })}>
            {text('part-remove')}
          </Button>
        )}
      </div>
    </JointFieldGroup>
  );
}
