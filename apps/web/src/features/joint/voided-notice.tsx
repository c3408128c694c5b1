import type { JointPage } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';
import { jointState } from './shown-make.ts';

/** Why there is no work on the joint any more, and the joint that it turned out to be. */
export function VoidedNotice({ page }: { page: JointPage }) {
  const text = useText('joint');
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const { voided } = jointState(page);
  if (!voided) return null;
  return (
    <Notice kind="attention" title={text('voided-title', { why: trade.word('void', voided.why) })}>
      <p>{voided.reason}</p>
      {voided.intoJointId !== null && (
        <p>
          <Link href={addresses.joint(shutdownId, voided.intoJointId)}>{text('voided-into')}</Link>
        </p>
      )}
    </Notice>
  );
}
