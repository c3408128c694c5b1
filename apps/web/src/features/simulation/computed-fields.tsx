import { BOLTING_GRADES } from '@seatwell/calc';
import { useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { MoreInputs } from '../calculator/more-inputs.tsx';
import type { SimulationInput, SimulationInputs } from './choices.ts';
import { Held, Plain } from './number-inputs.tsx';

const names: readonly SimulationInput[] = ['grade', 'nutFactor', 'boltShare_percent', 'division_Nm', 'setValues'];

/** What the cap of computed loads and the scale of the tool come from. */
export function ComputedFields(props: {
  readonly inputs: SimulationInputs;
  readonly change: (change: SimulationInputs) => void;
}) {
  const text = useText('simulation');
  const format = useFormat();
  const { inputs, change } = props;
  const [any] = useState(() => names.some((name) => inputs[name] !== undefined));
  return (
    <MoreInputs summary={text('computed-inputs')} open={any}>
      <Select
        label={text('grade')}
        value={inputs.grade ?? ''}
        onChange={(grade) => change({ grade })}
        options={BOLTING_GRADES.map((value) => ({ value, label: value }))}
      />
      <Plain {...props} name="nutFactor" label={text('nut-factor')} hint={text('nut-factor-hint')} />
      <Plain {...props} name="boltShare_percent" label={text('bolt-share')} unit="%" hint={text('bolt-share-hint')} />
      <Plain {...props} name="scatter_percent" label={text('scatter')} unit="%" hint={text('scatter-needed')} />
      <Held
        {...props}
        name="gasketMaximum_MPa"
        quantity="stress"
        label={text('gasket-maximum')}
        hint={text('gasket-maximum-hint')}
      />
      <Held {...props} name="division_Nm" quantity="torque" label={text('division')} hint={text('division-hint')} />
      <Select
        label={text('set-values')}
        value={inputs.setValues ?? '3'}
        onChange={(setValues) => change({ setValues })}
        options={[1, 2, 3, 4].map((count) => ({ value: String(count), label: format.count(count) }))}
      />
    </MoreInputs>
  );
}
