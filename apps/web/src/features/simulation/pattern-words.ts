import type { PatternChoice } from '@seatwell/calc';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';

/** The name of a way of tightening: legacy cross; several tools, cross, 4 at once. */
export function usePatternWords(): (choice: PatternChoice) => string {
  const text = useText('simulation');
  const trade = useTrade();
  const format = useFormat();
  return ({ pattern, tools }) =>
    tools === undefined
      ? trade.word('pattern', pattern)
      : text('pattern-tools', { pattern: trade.word('pattern', pattern), tools: format.count(tools) });
}
