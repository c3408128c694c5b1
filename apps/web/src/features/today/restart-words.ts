import type { PartTightRow, RestartAnswer } from '@seatwell/contract';
import { useMemo } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';

/** Where a part-tight flange was left, by whom, and where its work goes on. */
export function useRestartWords() {
  const text = useText('today');
  const format = useFormat();
  return useMemo(
    () => ({
      leftAt: ({ pass, lastBolt }: Pick<PartTightRow, 'pass' | 'lastBolt'>): string => {
        if (pass === null) return text('left-unknown');
        return lastBolt === null
          ? text('left-at-pass', { pass: format.count(pass) })
          : text('left-at-bolt', { pass: format.count(pass), bolt: format.count(lastBolt) });
      },
      by: ({ leftBy, crew }: Pick<PartTightRow, 'leftBy' | 'crew'>): string => {
        const names = leftBy.map((person) => person.name ?? text('name-erased')).join(', ');
        const of = crew === null ? '' : text('crew', { code: crew.code });
        return [names, of].filter(Boolean).join(', ');
      },
      restart: (restart: RestartAnswer): string => {
        const where = restart.finalRound
          ? text('restart-final-round')
          : text(restart.repeats ? 'restart-again' : 'restart-next', { pass: format.count(restart.pass) });
        return restart.leftOvernight ? text('restart-gaps', { where }) : where;
      },
    }),
    [text, format],
  );
}
