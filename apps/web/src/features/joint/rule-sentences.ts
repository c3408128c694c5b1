import type { Trade } from '../../app/use-trade.ts';

/** Rules by what they demand, one after the other; what is no rule of the catalogue stays as its code. */
export function ruleSentences(trade: Pick<Trade, 'rule'>, codes: readonly string[]): string {
  return codes.map((code) => trade.rule(code)?.sentence ?? code.replaceAll('-', ' ')).join(' ');
}
