import type { HistoryEntry } from '@seatwell/contract';
import { useCallback } from 'react';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import jointTexts from '../../texts/en/joint.json';
import { useText } from '../../texts/text-provider.tsx';
import type { TextKey } from '../../texts/translate.ts';
import { useCodeWord } from './use-code-word.ts';

const known: ReadonlySet<string> = new Set(Object.keys(jointTexts));

/** An event in one sentence, from its type and the few values that come with it. */
export function useEventSentence(): (entry: Pick<HistoryEntry, 'type' | 'data'>) => string {
  const text = useText('joint');
  const trade = useTrade();
  const format = useFormat();
  const codeWord = useCodeWord();
  return useCallback(
    ({ type, data }) => {
      const key = variantOf(type, data);
      const words: Record<string, string | number> = {};
      for (const [name, value] of Object.entries(data)) {
        if (typeof value === 'number') words[name] = format.count(value);
        else words[name] = value === null ? '' : String(value);
      }
      const named: Readonly<Record<string, string>> = {
        level: trade.word('checking', String(data.level)),
        purpose: trade.word('purpose', String(data.purpose)),
        workScope: trade.word('scope', String(data.workScope)),
        way: trade.word('proof', String(data.way)),
        worst: codeWord(['worst'], String(data.worst)),
        gasketFamily: trade.word('family', String(data.gasketFamily)),
      };
      for (const [name, word] of Object.entries(named)) if (data[name] !== undefined) words[name] = word;
      if (typeof data.gaps_mm === 'string')
        words.gaps_mm = data.gaps_mm
          .split(' ')
          .map((gap) => format.number(Number(gap), 1))
          .join(' · ');
      if (typeof data.set === 'number') words.set = format.number(data.set, Number.isInteger(data.set) ? 0 : 1);
      return known.has(key) ? text(key as TextKey<'joint'>, words) : type.replaceAll('-', ' ');
    },
    [text, trade, format, codeWord],
  );
}

/** The sentence's key: some events say one of two things. */
function variantOf(type: string, data: HistoryEntry['data']): string {
  const base = `event-${type}`;
  switch (type) {
    case 'pass-recorded':
      if (data.outcome === 'interrupted') return data.lastBolt === null ? `${base}-left` : `${base}-left-after`;
      return base;
    case 'faces-inspected':
      return data.accepted === false ? `${base}-rejected` : base;
    case 'checked':
      return data.outcome === 'rejected' ? `${base}-rejected` : base;
    case 'final-round-recorded':
      return data.nutMoved === true ? `${base}-moved` : base;
    case 'loosened':
      return data.extent === 'all' ? `${base}-all` : base;
    case 'nipped-up':
      return data.gaps_mm ? `${base}-gaps` : base;
    default:
      return base;
  }
}
