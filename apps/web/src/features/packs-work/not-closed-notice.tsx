import type { PackPage } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import { isClosed, underPressure } from './not-closed.ts';

/** Joints that would see the pressure and are not closed. */
export function NotClosedNotice({ pack }: { pack: PackPage }) {
  const text = useText('testing');
  const trade = useTrade();
  const open = underPressure(pack).filter((member) => !isClosed(member));
  if (open.length === 0) return null;
  return (
    <Notice kind="stop" title={text('not-closed', { count: open.length })}>
      <p>{text('not-closed-means')}</p>
      <ul>
        {open.map((member) => (
          <li key={member.makeId}>
            {member.tag} · {trade.word('stage', member.stage)}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
