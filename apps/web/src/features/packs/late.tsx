import { dayInZone } from '../../app/day-in-zone.ts';
import { useCurrentShutdown } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { daysLate } from './days-late.ts';
import styles from './packs.module.css';

/** By how many days a pack's test is late; nothing where it is not. */
export function Late({ plannedOn, proven }: { plannedOn: string | null; proven: boolean }) {
  const text = useText('packs');
  const format = useFormat();
  const timeZone = useCurrentShutdown()?.timeZone ?? 'UTC';
  const days = daysLate(plannedOn, proven, dayInZone(timeZone, 0));
  if (days === 0) return null;
  return <span className={styles.attention}> {text('days-late', { count: days, shown: format.count(days) })}</span>;
}
