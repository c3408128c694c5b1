import {
  FLANGE_STANDARDS,
  GASKET_CURVES,
  listFlangeRatings,
  listFlangeSizes,
  type PatternChoice,
} from '@seatwell/calc';
import { useState } from 'react';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { MoreInputs } from '../calculator/more-inputs.tsx';
import {
  COMPUTED,
  offeredChoices,
  type SimulationInput,
  type SimulationInputs,
  type Way,
  writeChoice,
  writeWay,
} from './choices.ts';
import { ComputedFields } from './computed-fields.tsx';
import { Held, Plain } from './number-inputs.tsx';
import { usePatternWords } from './pattern-words.ts';
import styles from './simulation.module.css';

interface Props {
  readonly inputs: SimulationInputs;
  readonly change: (change: SimulationInputs) => void;
  readonly boltCount: number | undefined;
  readonly first: PatternChoice;
  readonly second: Way;
}

/** What is simulated: the flange, the gasket, the target, and the two ways to compare. */
export function SimulationFields({ inputs, change, boltCount, first, second }: Props) {
  const text = useText('simulation');
  const trade = useTrade();
  const words = usePatternWords();
  const { standard, size } = inputs;
  const spaced = (key: string) => key.replace(/^([A-Z]+)(?=\d)/, '$1 ');
  const offered = offeredChoices(boltCount ?? 16).map((choice) => ({
    value: writeChoice(choice),
    label: words(choice),
  }));
  const number = { inputs, change };
  // Read once: a field that is emptied must not fold the group away under the hand.
  const [anyCondition] = useState(() => conditionNames.some((name) => inputs[name] !== undefined));
  return (
    <form className={styles.inputs} onSubmit={(event) => event.preventDefault()} aria-label={text('inputs')}>
      <Select
        label={text('standard')}
        value={standard ?? ''}
        onChange={(next) => change({ standard: next, size: '', rating: '', boltCount: '' })}
        options={FLANGE_STANDARDS.map((value) => ({ value, label: trade.word('standard', value) }))}
      />
      <Select
        label={text('size')}
        value={size ?? ''}
        onChange={(next) => change({ size: next, rating: '', boltCount: '' })}
        options={
          standard === undefined ? [] : listFlangeSizes(standard).map((value) => ({ value, label: spaced(value) }))
        }
      />
      <Select
        label={text('rating')}
        value={inputs.rating ?? ''}
        onChange={(rating) => change({ rating, boltCount: '' })}
        options={
          standard === undefined
            ? []
            : listFlangeRatings(standard, size).map((value) => ({ value, label: spaced(value) }))
        }
      />
      <RadioCards
        label={text('kind')}
        value={inputs.kind === 'weld-neck-to-blind' ? 'weld-neck-to-blind' : 'weld-neck-pair'}
        onChange={(kind) => change({ kind })}
        options={(['weld-neck-pair', 'weld-neck-to-blind'] as const).map((value) => ({ value, label: text(value) }))}
      />
      <Select
        label={text('family')}
        value={inputs.family ?? ''}
        onChange={(family) => change({ family })}
        options={Object.keys(GASKET_CURVES).map((value) => ({ value, label: trade.word('family', value) }))}
      />
      <Held {...number} name="stress_MPa" quantity="stress" label={text('target-stress')} />
      <Select
        label={text('area')}
        value={inputs.area ?? 'tensile'}
        onChange={(area) => change({ area })}
        options={(['tensile', 'root'] as const).map((value) => ({ value, label: text(`area-${value}`) }))}
      />
      <Select
        label={text('first')}
        value={writeChoice(first)}
        onChange={(next) => change({ first: next })}
        options={offered}
      />
      <Select
        label={text('second')}
        value={writeWay(second)}
        onChange={(next) => change({ second: next })}
        options={[...offered, { value: COMPUTED, label: words(COMPUTED) }]}
      />
      <MoreInputs summary={text('conditions')} open={anyCondition}>
        <TextField
          label={text('passes')}
          hint={text('passes-hint')}
          value={inputs.passes ?? ''}
          onChange={(passes) => change({ passes })}
        />
        <Plain {...number} name="limit_percent" label={text('limit')} unit="%" hint={text('limit-hint')} />
        <Plain {...number} name="scatter_percent" label={text('scatter')} unit="%" hint={text('scatter-hint')} />
        <Plain {...number} name="toolsAtOnce" label={text('tools-at-once')} hint={text('tools-hint')} />
        <Held {...number} name="tilt_mm" quantity="gap" label={text('tilt-before')} hint={text('tilt-hint')} />
        <Held
          {...number}
          name="contactInside_mm"
          quantity="length"
          label={text('contact-inside')}
          hint={text('contact-hint')}
        />
        <Held
          {...number}
          name="contactOutside_mm"
          quantity="length"
          label={text('contact-outside')}
          hint={text('contact-hint')}
        />
      </MoreInputs>
      <ComputedFields {...number} />
    </form>
  );
}

// Folded away while none of them is entered.
const conditionNames: readonly SimulationInput[] = [
  'passes',
  'limit_percent',
  'scatter_percent',
  'toolsAtOnce',
  'tilt_mm',
  'contactInside_mm',
  'contactOutside_mm',
];
