import type { QuantityName } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { PrintedList } from '../calculator/printed-list.tsx';
import { readChoice, readWay, SIMULATION_INPUTS, type SimulationInput, type SimulationInputs } from './choices.ts';
import { usePatternWords } from './pattern-words.ts';

const NAMES = {
  standard: 'standard',
  size: 'size',
  rating: 'rating',
  boltCount: 'bolts',
  kind: 'kind',
  family: 'family',
  contactInside_mm: 'contact-inside',
  contactOutside_mm: 'contact-outside',
  stress_MPa: 'target-stress',
  area: 'area',
  passes: 'passes',
  first: 'first',
  second: 'second',
  scatter_percent: 'scatter',
  tilt_mm: 'tilt-before',
  limit_percent: 'limit',
  toolsAtOnce: 'tools-at-once',
  grade: 'grade',
  nutFactor: 'nut-factor',
  boltShare_percent: 'bolt-share',
  gasketMaximum_MPa: 'gasket-maximum',
  division_Nm: 'division',
  setValues: 'set-values',
  runs: 'long-runs',
} as const satisfies Record<Exclude<SimulationInput, 'run'>, string>;

const QUANTITIES: Partial<Record<SimulationInput, QuantityName>> = {
  contactInside_mm: 'length',
  contactOutside_mm: 'length',
  stress_MPa: 'stress',
  tilt_mm: 'gap',
  gasketMaximum_MPa: 'stress',
  division_Nm: 'torque',
};

// The number of a long run on the server says nothing on paper.
const printedNames = SIMULATION_INPUTS.filter((name) => name !== 'run');

/** Everything that was entered, in words. */
export function PrintedInputs({ inputs }: { readonly inputs: SimulationInputs }) {
  const text = useText('simulation');
  const trade = useTrade();
  const format = useFormat();
  const words = usePatternWords();
  const shown = (name: SimulationInput): string => {
    const entered = inputs[name] ?? '';
    const quantity = QUANTITIES[name];
    const held = Number(entered);
    if (quantity !== undefined && Number.isFinite(held)) return format.quantity(quantity, held);
    if (name.endsWith('_percent') && Number.isFinite(held)) return format.percent(held / 100);
    if (name === 'standard' || name === 'family') return trade.word(name, entered);
    if (name === 'first') return words(readChoice(entered, 'legacy'));
    if (name === 'second') return words(readWay(entered, 'circular'));
    if (name === 'kind') return text(entered === 'weld-neck-to-blind' ? entered : 'weld-neck-pair');
    if (name === 'area') return text(entered === 'root' ? 'area-root' : 'area-tensile');
    return entered;
  };
  return (
    <PrintedList
      title={text('inputs')}
      inputs={printedNames
        .filter((name) => inputs[name] !== undefined)
        .map((name) => ({ name: text(NAMES[name]), value: shown(name) }))}
    />
  );
}
