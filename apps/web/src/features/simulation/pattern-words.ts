import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { COMPUTED, type Way } from './choices.ts';

/** The name of a way of tightening: legacy cross; several tools, cross, 4 at once. */
export function usePatternWords(): (way: Way) => string {
  const text = useText('simulation');
  const trade = useTrade();
  const format = useFormat();
  return (way) => {
    if (way === COMPUTED) return text('computed-loads');
    const pattern = trade.word('pattern', way.pattern);
    return way.tools === undefined ? pattern : text('pattern-tools', { pattern, tools: format.count(way.tools) });
  };
}
