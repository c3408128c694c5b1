import { BOLTING_GRADES, FLANGE_STANDARDS, listFlangeRatings, listFlangeSizes } from '@seatwell/calc';
import { GASKET_FAMILIES_KNOWN } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { gasketDataQuery } from '../../app/reads.ts';
import { useSaid } from '../../app/use-said.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { threadName } from '../../format/fractions.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import styles from './calculator.module.css';
import { ChoiceInput, EitherInput, InputGroup, PlainInput, QuantityInput, TextInput, useEntering } from './fields.tsx';
import { BoltPartInputs, RotationInputs, StrengthInputs, ThermalInputs } from './limit-inputs.tsx';
import { MoreInputs } from './more-inputs.tsx';
import { lookUp } from './request.ts';

/** The flange, by its standard or by its bolts. */
export function FlangeInputs() {
  const text = useText('calculator');
  const said = useSaid('calculation');
  const trade = useTrade();
  const { inputs, change } = useEntering();
  const { standard, size } = inputs;
  const custom = standard === 'custom';
  const { flange, flangeRefused } = lookUp(inputs);
  const spaced = (key: string) => key.replace(/^([A-Z]+)(?=\d)/, '$1 ');
  return (
    <InputGroup legend={text('flange')}>
      <Select
        label={text('input-standard')}
        value={standard ?? ''}
        onChange={(next) => change({ standard: next, size: '', rating: '', boltCount: '' })}
        options={[...FLANGE_STANDARDS, 'custom'].map((value) => ({ value, label: trade.word('standard', value) }))}
      />
      {standard !== undefined && !custom && (
        <div className={styles.pair}>
          <Select
            label={text('input-size')}
            value={size ?? ''}
            onChange={(next) => change({ size: next, rating: '', boltCount: '' })}
            options={listFlangeSizes(standard).map((value) => ({ value, label: spaced(value) }))}
          />
          <ChoiceInput
            name="rating"
            options={listFlangeRatings(standard, size).map((value) => ({ value, label: spaced(value) }))}
          />
        </div>
      )}
      {custom && (
        <>
          <div className={styles.pair}>
            <PlainInput name="boltCount" />
            <TextInput name="thread" hint={text('thread-hint')} />
          </div>
          <QuantityInput name="hole_mm" quantity="length" optional />
        </>
      )}
      {flange && (
        <p className={styles.soft}>
          {text('flange-has', {
            count: flange.boltCount,
            thread: threadName(flange.boltThread),
            source: flange.source,
          })}
        </p>
      )}
      {flangeRefused !== undefined && (
        <>
          <p>{flangeRefused.map((each) => said(each)).join(' ')}</p>
          <PlainInput name="boltCount" />
        </>
      )}
      <MoreInputs summary={text('flange-ceiling')}>
        <QuantityInput name="flangeMaximum_MPa" quantity="stress" optional hint={text('flange-ceiling-hint')} />
        <TextInput name="flangeMaximumSource" optional />
      </MoreInputs>
      <StrengthInputs />
      <RotationInputs />
    </InputGroup>
  );
}

/** The gasket with its limits and their source, entered or taken from the site's data. */
export function GasketInputs() {
  const text = useText('calculator');
  const trade = useTrade();
  const format = useFormat();
  const { inputs, change } = useEntering();
  const site = useQuery(gasketDataQuery);
  const { gasket } = lookUp(inputs);
  const rows = (site.data?.rows ?? []).filter(
    (row) => inputs.family === undefined || row.content.family === inputs.family,
  );
  return (
    <InputGroup legend={text('gasket')}>
      <ChoiceInput
        name="family"
        options={GASKET_FAMILIES_KNOWN.filter((value) => value !== 'none').map((value) => ({
          value,
          label: trade.word('family', value),
        }))}
      />
      {inputs.family === 'ring-joint' ? (
        <RingInputs />
      ) : (
        <div className={styles.pair}>
          <QuantityInput
            name="contactInside_mm"
            quantity="length"
            optional={gasket !== undefined}
            hint={gasket && text('from-table', { value: format.quantity('length', gasket.contactInside_mm) })}
          />
          <QuantityInput
            name="contactOutside_mm"
            quantity="length"
            optional={gasket !== undefined}
            hint={gasket && text('from-table', { value: format.quantity('length', gasket.contactOutside_mm) })}
          />
        </div>
      )}
      {gasket && <p className={styles.soft}>{gasket.source}</p>}
      <div className={styles.pair}>
        <PlainInput name="gasketCount" optional hint={text('gasket-count-hint')} />
        <PlainInput name="ribArea_mm2" unit="mm²" optional hint={text('rib-hint')} />
      </div>
      {rows.length > 0 && (
        <Select
          label={text('site-gasket')}
          optional
          value={rows.find((row) => row.content.source === inputs.gasketSource)?.dataId ?? ''}
          onChange={(dataId) => {
            const content = rows.find((row) => row.dataId === dataId)?.content;
            if (!content) return;
            change({
              family: content.family,
              seating_MPa: String(content.seating_MPa),
              operating_MPa: String(content.operating_MPa),
              target_MPa: String(content.target_MPa),
              maximum_MPa: String(content.maximum_MPa),
              gasketSource: content.source,
            });
          }}
          options={rows.map((row) => ({ value: row.dataId, label: row.name }))}
        />
      )}
      <div className={styles.pair}>
        <QuantityInput name="seating_MPa" quantity="stress" />
        <QuantityInput name="operating_MPa" quantity="stress" />
        <QuantityInput name="target_MPa" quantity="stress" />
        <QuantityInput name="maximum_MPa" quantity="stress" />
      </div>
      <TextInput name="gasketSource" hint={text('gasket-source-hint')} />
    </InputGroup>
  );
}

/** A metal ring: no dimension of rings is held here, so they are entered. */
function RingInputs() {
  const text = useText('calculator');
  const { inputs } = useEntering();
  const { flange } = lookUp(inputs);
  return (
    <>
      {flange?.ringGroove !== undefined && (
        <p className={styles.soft}>{text('ring-of-flange', { ring: flange.ringGroove })}</p>
      )}
      <div className={styles.pair}>
        <QuantityInput name="ringPitch_mm" quantity="length" />
        <QuantityInput name="ringWidth_mm" quantity="length" />
      </div>
      <TextInput name="ringSource" hint={text('ring-hint')} />
    </>
  );
}

/** The bolting: grade and condition; its thread is that of the flange. */
export function BoltingInputs() {
  const text = useText('calculator');
  const { inputs } = useEntering();
  const known = BOLTING_GRADES.some((grade) => grade === inputs.grade);
  return (
    <InputGroup legend={text('bolting')}>
      <div className={styles.pair}>
        <ChoiceInput name="grade" options={BOLTING_GRADES.map((value) => ({ value, label: value }))} />
        <ChoiceInput
          name="condition"
          options={(['new', 'reused', 'coated'] as const).map((value) => ({
            value,
            label: text(`condition-${value}`),
          }))}
        />
      </div>
      <MoreInputs
        summary={text('own-yield')}
        open={inputs.yield_MPa !== undefined || (inputs.grade !== undefined && !known)}
      >
        <QuantityInput name="yield_MPa" quantity="stress" optional />
        <TextInput name="yieldSource" optional />
      </MoreInputs>
      <BoltPartInputs />
      <div className={styles.pair}>
        <QuantityInput name="grip_mm" quantity="length" optional hint={text('grip-hint')} />
        <QuantityInput name="elasticModulus_MPa" quantity="stress" optional />
      </div>
    </InputGroup>
  );
}

/** What the joint must bear. */
export function ServiceInputs() {
  const text = useText('calculator');
  return (
    <InputGroup legend={text('service')}>
      <div className={styles.pair}>
        <QuantityInput name="pressure_MPa" quantity="pressure" />
        <QuantityInput name="temperature_C" quantity="temperature" />
        <QuantityInput name="testPressure_MPa" quantity="pressure" optional />
      </div>
      <MoreInputs summary={text('external')}>
        <QuantityInput name="axialForce_N" quantity="load" optional />
        <QuantityInput name="moment_Nm" quantity="torque" optional />
      </MoreInputs>
      <ThermalInputs />
      <EitherInput
        name="area"
        options={(['tensile', 'root'] as const).map((value) => ({ value, label: text(`area-${value}`) }))}
      />
    </InputGroup>
  );
}
