import type { QuantityName } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { INPUT_NAMES, INPUT_QUANTITIES, type InputName, type Inputs, numberIn } from './inputs.ts';
import { PrintedList } from './printed-list.tsx';

/** Everything that was entered, in words. */
export function PrintedInputs({ inputs }: { inputs: Inputs }) {
  const text = useText('calculator');
  const shown = useShownInput();
  return (
    <PrintedList
      title={text('inputs')}
      inputs={INPUT_NAMES.filter((name) => inputs[name] !== undefined).map((name) => ({
        name: text(`input-${name}`),
        value: shown(name, inputs),
      }))}
    />
  );
}

function useShownInput(): (name: InputName, inputs: Inputs) => string {
  const text = useText('calculator');
  const trade = useTrade();
  const format = useFormat();
  const quantities: Partial<Record<InputName, QuantityName>> = INPUT_QUANTITIES;
  return (name, inputs) => {
    const entered = inputs[name] ?? '';
    const quantity = quantities[name];
    const held = numberIn(inputs, name);
    if (quantity !== undefined && held !== undefined) return format.quantity(quantity, held);
    if (name.endsWith('_percent') && held !== undefined) return format.percent(held / 100);
    switch (name) {
      case 'standard':
      case 'family':
      case 'method':
      case 'pattern':
        return trade.word(name, entered);
      case 'friction':
        return text(entered === 'friction' ? 'friction-friction' : 'friction-nut-factor');
      case 'strengthKind':
        return text(entered === 'loose' ? 'strength-loose' : 'strength-integral');
      case 'washersPerBolt':
        return text(entered === '2' ? 'washers-2' : 'washers-1');
      case 'numbering':
        return text(entered === 'order' ? 'numbering-order' : 'numbering-clockwise');
      case 'area':
        return text(entered === 'root' ? 'area-root' : 'area-tensile');
      case 'side':
        return text(entered === 'other-side' ? 'other-side' : 'viewing-side');
      default:
        return entered;
    }
  };
}
