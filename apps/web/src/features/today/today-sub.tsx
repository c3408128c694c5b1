import type { TodayAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';

// The name of a shift stands first in the sentence.
const capitalised = (name: string) => name.charAt(0).toLocaleUpperCase() + name.slice(1);

/** Which shift handed over, which day it is, how many joints are tight. */
export function TodaySub({ shutdownId, today }: { shutdownId: string; today: TodayAnswer }) {
  const text = useText('today');
  const format = useFormat();
  const { lastShift, shutdown } = today;
  const { dayNumber, days } = shutdown;
  const dayWords =
    dayNumber < 1
      ? text('day-before', { count: 1 - dayNumber, shown: format.count(1 - dayNumber) })
      : dayNumber > days
        ? text('day-after', { count: dayNumber - days, shown: format.count(dayNumber - days) })
        : text('day-of', { day: format.count(dayNumber), days: format.count(days) });
  return (
    <>
      {text('handed-over', {
        shift: capitalised(lastShift.name),
        day: format.calendarDay(lastShift.day),
        time: format.time(lastShift.end),
      })}
      {' · '}
      {dayWords}
      {' · '}
      <Link href={addresses.register(shutdownId, { stageFrom: 'tight' })}>
        {text('tight-of', { tight: format.count(today.tight), total: format.count(today.total) })}
      </Link>
    </>
  );
}
