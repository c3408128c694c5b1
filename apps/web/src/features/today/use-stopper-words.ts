import type { Stopper, WhoAnswer } from '@seatwell/contract';
import { useMemo } from 'react';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import stopperTexts from '../../texts/en/stoppers.json';
import { useText } from '../../texts/text-provider.tsx';
import type { TextKey } from '../../texts/translate.ts';

const known: ReadonlySet<string> = new Set(Object.keys(stopperTexts).map((key) => key.replace(/_(one|other)$/, '')));

/** Words for what stops a pack or a system, and for who moves it on. */
export function useStopperWords() {
  const text = useText('stoppers');
  const trade = useTrade();
  const format = useFormat();
  return useMemo(() => {
    const stopper = ({ code, data }: Pick<Stopper, 'code' | 'data'>): string => {
      if (!known.has(code)) return code.replaceAll('-', ' ');
      const values: Record<string, string | number> = {};
      for (const [name, value] of Object.entries(data)) {
        if (name === 'pressure_MPa') values.pressure = format.quantity('pressure', Number(value));
        else if (name === 'hold_min') values.hold = format.duration(Number(value));
        else if (typeof value === 'number') values[name === 'count' ? 'shown' : name] = format.count(value);
        else values[name] = String(value ?? '');
      }
      if (typeof data.count === 'number') values.count = data.count;
      return text(code as TextKey<'stoppers'>, values);
    };
    const who = ({ role, persons, crew }: WhoAnswer): string => {
      const names = persons.map((person) => person.name ?? text('name-erased'));
      const shown = names.length > 2 ? [...names.slice(0, 2), text('more', { shown: names.length - 2 })] : names;
      const parts = [
        shown.join(', '),
        crew === null ? '' : text('crew', { code: crew.code }),
        role === null ? '' : trade.word('role', role),
      ];
      return parts.filter(Boolean).join(', ');
    };
    return { stopper, who };
  }, [text, trade, format]);
}
