import type { WorkingStep } from '@seatwell/calc';
import { decimalsFor } from '../../format/decimals.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';

interface Props {
  readonly caption: string;
  readonly captionHidden?: boolean;
  readonly steps: readonly WorkingStep[];
}

/** Every step with its formula, its numbers and its source, to be followed by hand and printed. */
export function WorkingSteps({ caption, captionHidden = false, steps }: Props) {
  const text = useText('joint');
  const format = useFormat();
  const rows = steps.map((step, index) => ({ ...step, index }));
  return (
    <Table
      caption={caption}
      captionHidden={captionHidden}
      rows={rows}
      rowKey={(step) => String(step.index)}
      columns={[
        { key: 'symbol', header: text('symbol'), rowHeader: true, cell: (step) => step.symbol },
        { key: 'meaning', header: text('meaning'), cell: (step) => step.meaning },
        { key: 'formula', header: text('formula'), cell: (step) => step.formula },
        { key: 'numbers', header: text('numbers'), cell: (step) => step.substituted },
        {
          key: 'value',
          header: text('value'),
          numeric: true,
          cell: (step) => `${format.number(step.value, decimalsFor(step.value))} ${step.unit}`,
        },
        { key: 'source', header: text('source'), cell: (step) => step.source },
      ]}
    />
  );
}
