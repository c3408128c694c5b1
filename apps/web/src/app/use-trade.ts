import type { WaitsForAnswer } from '@seatwell/contract';
import { useMemo } from 'react';
import { useFormat } from '../format/format-provider.tsx';
import type { Formatter } from '../format/formatter.ts';
import { inchFraction } from '../format/fractions.ts';
import tradeTexts from '../texts/en/trade.json';
import { useText } from '../texts/text-provider.tsx';
import type { TextKey, Translate } from '../texts/translate.ts';

type TradeKey = TextKey<'trade'>;
type Group = TradeKey extends infer Key ? (Key extends `${infer Head}-${string}` ? Head : never) : never;

const tradeKeys: ReadonlySet<string> = new Set(Object.keys(tradeTexts));

/** The trade's words for the codes of the API. A code that is new to this screen is shown as it is. */
export interface Trade {
  /** `word('stage', 'nipped-up')` → nipped up */
  readonly word: (group: Group, code: string) => string;
  readonly waitsFor: (waits: WaitsForAnswer) => string;
  /** NPS 12 · Class 300 */
  readonly flange: (size: string, rating: string) => string;
  /** 16 × 1⅛″ */
  readonly bolts: (count: number | null, thread: string | null) => string;
}

export function useTrade(): Trade {
  const text = useText('trade');
  const format = useFormat();
  return useMemo(() => trade(text, format), [text, format]);
}

function trade(text: Translate<'trade'>, format: Formatter): Trade {
  // A long table asks for the same few words in every frame.
  const words = new Map<string, string>();
  const word: Trade['word'] = (group, code) => {
    const key = `${group}-${code}`;
    const known = words.get(key);
    if (known !== undefined) return known;
    const said = tradeKeys.has(key) ? text(key as TradeKey) : code.replaceAll('-', ' ');
    words.set(key, said);
    return said;
  };
  return {
    word,
    waitsFor: ({ code, data }) => {
      if (code === 'check') return text('waits-check', { level: word('checking', String(data.level)) });
      if (code === 'pass')
        return data.of ? text('waits-pass-of', values(data, format)) : text('waits-pass', values(data, format));
      if (code === 'proof') return text('waits-proof', { way: word('proof', String(data.way)) });
      if (code === 'repair') return data.leaking ? text('waits-repair-leaking') : text('waits-repair');
      if (code === 'hold') return text('waits-hold', { reason: String(data.reason ?? '') });
      return word('waits', code);
    },
    flange: flangeWords,
    bolts: (count, thread) =>
      [count === null ? null : format.count(count), thread === null ? null : threadSize(thread)]
        .filter((part) => part !== null)
        .join('\u00a0×\u00a0'),
  };
}

const values = (data: WaitsForAnswer['data'], format: Formatter) =>
  Object.fromEntries(
    Object.entries(data).map(([name, value]) => [
      name,
      typeof value === 'number' ? format.count(value) : String(value),
    ]),
  );

/** NPS12 and 300 as people write them: NPS 12 · 300; DN100 and PN16: DN 100 · PN 16. */
export function flangeWords(size: string, rating: string): string {
  const spaced = (key: string) => key.replace(/^([A-Z]+)(?=\d)/, '$1 ');
  return [spaced(size), spaced(rating)].filter(Boolean).join(' · ');
}

/** The size of a thread as the trade says it: `1 1/8-8 UN` → 1⅛″, `M20x2.5` → M20. */
export function threadSize(thread: string): string {
  const metric = /^M\d+(\.\d+)?/i.exec(thread);
  if (metric) return metric[0];
  const inch = /^(?:(\d+)(?:[ -](\d+)\/(\d+))?|(\d+)\/(\d+))(?=[-\s"]|$)/.exec(thread.trim());
  if (!inch) return thread;
  const [, whole, over, under, plainOver, plainUnder] = inch;
  const size = Number(whole ?? 0) + Number(over ?? plainOver ?? 0) / Number(under ?? plainUnder ?? 1);
  const fraction = inchFraction(size);
  return fraction === undefined ? thread : `${fraction}″`;
}
