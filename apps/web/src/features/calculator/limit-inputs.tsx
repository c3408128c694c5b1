import { COATING_LIMITS } from '@seatwell/calc';
import { useText } from '../../texts/text-provider.tsx';
import styles from './calculator.module.css';
import { ChoiceInput, PlainInput, QuantityInput, TextInput, useEntering } from './fields.tsx';
import { MoreInputs } from './more-inputs.tsx';

/** Dimensions and allowables for the stresses of the code; what a standard flange leaves open its tables fill in. */
export function StrengthInputs() {
  const text = useText('calculator');
  const { inputs } = useEntering();
  const custom = inputs.standard === 'custom';
  return (
    <MoreInputs summary={text('strength')} open={inputs.strengthKind !== undefined}>
      <ChoiceInput
        name="strengthKind"
        optional
        hint={text(custom ? 'strength-custom' : 'strength-rated')}
        options={(['integral', 'loose'] as const).map((value) => ({ value, label: text(`strength-${value}`) }))}
      />
      {inputs.strengthKind !== undefined && (
        <>
          <div className={styles.pair}>
            {(['outside_mm', 'inside_mm', 'boltCircle_mm', 'thickness_mm'] as const).map((name) => (
              <QuantityInput key={name} name={name} quantity="length" optional={!custom} />
            ))}
            {(['hubLength_mm', 'hubSmall_mm', 'hubLarge_mm'] as const).map((name) => (
              <QuantityInput key={name} name={name} quantity="length" optional />
            ))}
          </div>
          <div className={styles.pair}>
            {(
              ['allowableAmbient_MPa', 'allowableOperating_MPa', 'modulusAmbient_MPa', 'modulusOperating_MPa'] as const
            ).map((name) => (
              <QuantityInput key={name} name={name} quantity="stress" />
            ))}
          </div>
          <TextInput name="strengthSource" />
        </>
      )}
    </MoreInputs>
  );
}

/** The rotation that the gasket bears; nobody publishes one. */
export function RotationInputs() {
  const text = useText('calculator');
  const { inputs } = useEntering();
  return (
    <MoreInputs summary={text('rotation')} open={inputs.rotationLimit_deg !== undefined}>
      <div className={styles.pair}>
        <PlainInput name="rotationLimit_deg" unit="°" optional hint={text('rotation-hint')} />
        <PlainInput name="rotationAtMaximum_deg" unit="°" optional hint={text('rotation-at-maximum-hint')} />
      </div>
      <TextInput name="rotationSource" optional />
    </MoreInputs>
  );
}

/** What goes with the bolts: nut, coating, washers. */
export function BoltPartInputs() {
  const text = useText('calculator');
  const { inputs } = useEntering();
  const { washersPerBolt, coating } = inputs;
  return (
    <>
      <TextInput name="nut" optional hint={text('nut-hint')} />
      {(inputs.condition === 'coated' || coating !== undefined) && (
        <>
          <TextInput
            name="coating"
            optional
            hint={text('coating-hint', { list: COATING_LIMITS.map((row) => row.coating).join(', ') })}
          />
          <div className={styles.pair}>
            <QuantityInput name="coatingMaximum_C" quantity="temperature" optional />
            <TextInput name="coatingSource" optional />
          </div>
        </>
      )}
      <ChoiceInput
        name="washersPerBolt"
        optional
        options={(['1', '2'] as const).map((value) => ({ value, label: text(`washers-${value}`) }))}
      />
      {washersPerBolt !== undefined && (
        <div className={styles.pair}>
          {(['washerInside_mm', 'washerOutside_mm', 'washerThickness_mm'] as const).map((name) => (
            <QuantityInput key={name} name={name} quantity="length" optional hint={text('washer-hint')} />
          ))}
        </div>
      )}
    </>
  );
}

/** Bolts and flanges at different temperatures, going up and coming down. */
export function ThermalInputs() {
  const text = useText('calculator');
  const { inputs } = useEntering();
  const entered = ['startBolt_C', 'startFlange_C', 'coolBolt_C', 'coolFlange_C'] as const;
  return (
    <MoreInputs summary={text('thermal')} open={entered.some((name) => inputs[name] !== undefined)}>
      <p className={styles.soft}>{text('thermal-hint')}</p>
      <QuantityInput name="assembly_C" quantity="temperature" optional />
      <div className={styles.pair}>
        {entered.map((name) => (
          <QuantityInput key={name} name={name} quantity="temperature" optional />
        ))}
        <PlainInput name="boltExpansion_ppmK" unit="µm/(m·K)" optional />
        <PlainInput name="flangeExpansion_ppmK" unit="µm/(m·K)" optional />
      </div>
      <TextInput name="expansionSource" optional />
      <div className={styles.pair}>
        <PlainInput name="flangeStiffness_kNmm" unit="kN/mm" optional hint={text('stiffness-hint')} />
        <PlainInput name="gasketStiffness_kNmm" unit="kN/mm" optional />
      </div>
      <TextInput name="stiffnessSource" optional />
    </MoreInputs>
  );
}
