import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import type { LabelSheet, LabelSizes, TypedSizes } from './label-sizes.ts';
import styles from './register.module.css';

interface Props {
  readonly sheet: LabelSheet;
  readonly onSheet: (sheet: LabelSheet) => void;
  readonly typed: TypedSizes;
  readonly onTyped: (typed: TypedSizes) => void;
  readonly first: number | undefined;
  readonly onFirst: (first: number | undefined) => void;
}

const margins = [
  ['marginX_mm', 'label-margin-x'],
  ['marginY_mm', 'label-margin-y'],
  ['gapX_mm', 'label-gap-x'],
  ['gapY_mm', 'label-gap-y'],
] as const satisfies readonly (readonly [keyof LabelSizes, string])[];

/** On what the tags are printed: a sheet of labels known by its size, or as its pack says. */
export function LabelFields({ sheet, onSheet, typed, onTyped, first, onFirst }: Props) {
  const text = useText('register');
  const sheets: readonly LabelSheet[] = ['cards', '2x7', '3x8', 'own'];
  return (
    <>
      <Select
        label={text('labels')}
        value={sheet}
        options={sheets.map((value) => ({ value, label: text(`labels-${value}`) }))}
        onChange={onSheet}
      />
      {sheet === 'own' && (
        <div className={styles.sizes}>
          <NumberField
            label={text('label-columns')}
            value={typed.columns}
            least={1}
            most={4}
            decimals={0}
            onChange={(columns) => onTyped({ ...typed, columns })}
          />
          <NumberField
            label={text('label-rows')}
            value={typed.rows}
            least={1}
            most={13}
            decimals={0}
            onChange={(rows) => onTyped({ ...typed, rows })}
          />
          {margins.map(([name, label]) => (
            <NumberField
              key={name}
              label={text(label)}
              unit="mm"
              least={0}
              value={typed[name]}
              onChange={(value) => onTyped({ ...typed, [name]: value })}
            />
          ))}
        </div>
      )}
      <NumberField label={text('label-first')} value={first} least={1} decimals={0} onChange={onFirst} />
    </>
  );
}
