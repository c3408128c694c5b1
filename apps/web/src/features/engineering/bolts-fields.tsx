import { COATING_LIMITS } from '@seatwell/calc';
import type { ProcedureBolts, ProcedureContent } from '@seatwell/contract';
import { QuantityField } from '../../app/quantity-field.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { FieldGroup } from '../../ui/field-group.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './engineering.module.css';
import { emptyBolts, withCoating, withMaterial, withWasher } from './procedure-bolts.ts';

interface Props {
  readonly value: ProcedureContent['bolts'];
  /** undefined = the procedure says nothing of them */
  readonly onChange: (value: ProcedureBolts | undefined) => void;
}

const PER_MILLION = 1e-6;
const washerDimensions = [
  ['insideDiameter_mm', 'input-washerInside_mm'],
  ['outsideDiameter_mm', 'input-washerOutside_mm'],
  ['thickness_mm', 'input-washerThickness_mm'],
] as const;

/** What the procedure says of the bolts: condition, coating, washers, material. Targets are calculated with it. */
export function BoltsFields({ value, onChange }: Props) {
  const text = useText('engineering');
  return (
    <FieldGroup legend={text('bolts')}>
      <Checkbox
        label={text('bolts-said')}
        detail={text('bolts-said-detail')}
        checked={Boolean(value)}
        onChange={(said) => onChange(said ? emptyBolts : undefined)}
      />
      {value && <SaidFields value={value} onChange={onChange} />}
    </FieldGroup>
  );
}

function SaidFields({ value, onChange }: { value: ProcedureBolts; onChange: (value: ProcedureBolts) => void }) {
  const text = useText('engineering');
  const words = useText('calculator');
  const { condition, coating, washers, material } = value;
  const expansion = material?.expansion_perK ?? undefined;
  return (
    <div className={styles.pair}>
      <Select
        label={words('input-condition')}
        value={condition}
        onChange={(chosen) => onChange({ ...value, condition: chosen })}
        options={(['new', 'reused'] as const).map((each) => ({ value: each, label: words(`condition-${each}`) }))}
      />
      <TextField
        label={words('input-coating')}
        optional
        hint={`${text('coating-bare')} ${words('coating-hint', { list: COATING_LIMITS.map((row) => row.coating).join(', ') })}`}
        value={coating?.name ?? ''}
        onChange={(name) => onChange(withCoating(value, { name }))}
      />
      {coating && (
        <>
          <QuantityField
            label={words('input-coatingMaximum_C')}
            optional
            quantity="temperature"
            value={coating.maximum_C}
            onChange={(maximum_C) => onChange(withCoating(value, { maximum_C: maximum_C ?? null }))}
          />
          <TextField
            label={words('input-coatingSource')}
            optional={coating.maximum_C === null}
            value={coating.source ?? ''}
            onChange={(source) => onChange(withCoating(value, { source: source === '' ? null : source }))}
          />
        </>
      )}
      <Select
        label={words('input-washersPerBolt')}
        value={String(washers?.perBolt ?? 0)}
        onChange={(chosen) => onChange(withWasher(value, { perBolt: chosen === '2' ? 2 : chosen === '1' ? 1 : 0 }))}
        options={(['0', '1', '2'] as const).map((each) => ({
          value: each,
          label: each === '0' ? text('washers-none') : words(`washers-${each}`),
        }))}
      />
      {washers &&
        washerDimensions.map(([name, label]) => (
          <QuantityField
            key={name}
            label={words(label)}
            optional
            quantity="length"
            hint={words('washer-hint')}
            value={washers[name]}
            onChange={(held) => onChange(withWasher(value, { [name]: held ?? null }))}
          />
        ))}
      <QuantityField
        label={words('input-elasticModulus_MPa')}
        optional
        quantity="stress"
        hint={text('bolt-modulus-hint')}
        value={material?.elasticModulus_MPa}
        onChange={(elasticModulus_MPa) => onChange(withMaterial(value, elasticModulus_MPa))}
      />
      {material && (
        <>
          <NumberField
            label={words('input-boltExpansion_ppmK')}
            optional
            unit="µm/(m·K)"
            least={1}
            most={40}
            value={expansion === undefined ? undefined : Number((expansion / PER_MILLION).toPrecision(9))}
            onChange={(entered) =>
              onChange({
                ...value,
                material: {
                  ...material,
                  expansion_perK: entered === undefined || !(entered > 0) ? null : entered * PER_MILLION,
                },
              })
            }
          />
          <TextField
            label={text('bolt-material-source')}
            value={material.source}
            onChange={(source) => onChange({ ...value, material: { ...material, source } })}
          />
        </>
      )}
    </div>
  );
}
