import { METHOD_SCATTER } from '@seatwell/calc';
import { PATTERNS, TIGHTENING_METHODS } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { lubricantsQuery, toolsQuery } from '../../app/reads.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { PairsField } from '../tools/pairs-field.tsx';
import styles from './calculator.module.css';
import { ChoiceInput, EitherInput, InputGroup, PlainInput, QuantityInput, TextInput, useEntering } from './fields.tsx';
import { readChart, writeChart } from './inputs.ts';
import { useChartDrafts } from './use-chart-drafts.ts';

/** The lubricant: a nut factor or two frictions, always with their source. */
export function LubricantInputs() {
  const text = useText('calculator');
  const format = useFormat();
  const { inputs, change } = useEntering();
  const site = useQuery(lubricantsQuery);
  const rows = site.data?.rows ?? [];
  return (
    <InputGroup legend={text('lubricant')}>
      <EitherInput
        name="friction"
        options={(['nut-factor', 'friction'] as const).map((value) => ({ value, label: text(`friction-${value}`) }))}
      />
      {rows.length > 0 && inputs.friction !== 'friction' && (
        <Select
          label={text('site-lubricant')}
          optional
          value={rows.find((row) => row.content.source === inputs.lubricantSource)?.dataId ?? ''}
          onChange={(dataId) => {
            const content = rows.find((row) => row.dataId === dataId)?.content;
            if (content) change({ nutFactor: String(content.nutFactor), lubricantSource: content.source });
          }}
          options={rows.map((row) => ({
            value: row.dataId,
            label: row.name,
            detail: format.number(row.content.nutFactor, 2),
          }))}
        />
      )}
      {inputs.friction === 'friction' ? (
        <div className={styles.pair}>
          <PlainInput name="threadFriction" />
          <PlainInput name="bearingFriction" />
        </div>
      ) : (
        <PlainInput name="nutFactor" hint={text('nut-factor-hint')} />
      )}
      <TextInput name="lubricantSource" />
    </InputGroup>
  );
}

/** How the bolts are tightened, and what the tool needs to be set. */
export function MethodInputs() {
  const text = useText('calculator');
  const trade = useTrade();
  const { inputs } = useEntering();
  return (
    <InputGroup legend={text('method')}>
      <ChoiceInput
        name="method"
        options={TIGHTENING_METHODS.map((value) => ({
          value,
          label: trade.word('method', value),
          detail: text('usual-scatter', { percent: METHOD_SCATTER[value].scatter_percent }),
        }))}
      />
      {inputs.method === 'hydraulic-wrench' && <WrenchChart />}
      {inputs.method === 'tensioner' && (
        <PlainInput name="hydraulicArea_mm2" unit="mm²" optional hint={text('tensioner-hint')} />
      )}
      {inputs.method === 'elongation' && <p className={styles.soft}>{text('elongation-needs')}</p>}
    </InputGroup>
  );
}

function WrenchChart() {
  const text = useText('calculator');
  const { inputs, change } = useEntering();
  const tools = useQuery(toolsQuery);
  const wrenches = (tools.data?.rows ?? []).filter((row) => (row.inForce?.pairs.length ?? 0) > 1);
  const [drafts, setDrafts] = useChartDrafts(readChart(inputs.pairs), (pairs) => change({ pairs: writeChart(pairs) }));
  return (
    <>
      {wrenches.length > 0 && (
        <Select
          label={text('site-wrench')}
          optional
          value=""
          onChange={(toolId) => {
            const pairs = wrenches.find((row) => row.toolId === toolId)?.inForce?.pairs;
            if (pairs) change({ pairs: writeChart(pairs) });
          }}
          options={wrenches.map((row) => ({
            value: row.toolId,
            label: row.tag,
            ...(row.maker ? { detail: row.maker } : {}),
          }))}
        />
      )}
      <PairsField value={drafts} onChange={setDrafts} />
      <QuantityInput name="gaugeDivision_MPa" quantity="pressure" hint={text('division-hint')} />
    </>
  );
}

/** Between which shares of yield the bolts may be, and what overrides the target. */
export function PolicyInputs() {
  const text = useText('calculator');
  return (
    <InputGroup legend={text('policy')}>
      <div className={styles.pair}>
        <PlainInput name="leastShare_percent" unit="%" hint={text('share-hint')} />
        <PlainInput name="mostShare_percent" unit="%" hint={text('share-hint')} />
      </div>
      <PlainInput name="scatter_percent" unit="%" optional hint={text('scatter-hint')} />
      <QuantityInput name="boltStress_MPa" quantity="stress" optional hint={text('stress-hint')} />
    </InputGroup>
  );
}

/** In which order, in how many passes, in which numbering, seen from where. */
export function SequenceInputs() {
  const text = useText('calculator');
  const trade = useTrade();
  const { inputs, change } = useEntering();
  const several = inputs.pattern?.startsWith('simultaneous') ?? false;
  return (
    <InputGroup legend={text('sequence')}>
      <Select
        label={text('input-pattern')}
        value={inputs.pattern ?? 'legacy'}
        onChange={(pattern) =>
          change({ pattern, ...(pattern.startsWith('simultaneous') ? { group: '' } : { tools: '' }) })
        }
        options={PATTERNS.map((value) => ({ value, label: trade.word('pattern', value) }))}
      />
      {several ? (
        <PlainInput name="tools" hint={text('tools-hint')} />
      ) : (
        <PlainInput name="group" optional hint={text('group-hint')} />
      )}
      <TextField
        label={text('input-passes')}
        hint={text('passes-hint')}
        value={inputs.passes ?? ''}
        onChange={(passes) => change({ passes })}
      />
      <EitherInput
        name="numbering"
        options={(['clockwise', 'order'] as const).map((value) => ({ value, label: text(`numbering-${value}`) }))}
      />
      <EitherInput
        name="side"
        options={(['viewing-side', 'other-side'] as const).map((value) => ({ value, label: text(value) }))}
      />
    </InputGroup>
  );
}
