import type { PackPage } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { shutdownRead } from '../../app/reads.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import styles from '../signing/signing.module.css';
import { NotClosedNotice } from './not-closed-notice.tsx';
import { PackReading } from './pack-reading.tsx';
import { PackRelease } from './pack-release.tsx';
import { ProvePack } from './prove-pack.tsx';

export const packQuery = (shutdownId: string, packId: string) => shutdownRead<PackPage>(shutdownId, `/packs/${packId}`);

/** The test of a pack at the plant: release to pressure, readings with a result per joint, proven. */
export function PackTestPage() {
  const text = useText('testing');
  const format = useFormat();
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const { packId } = useParams({ strict: false });
  const { data: pack } = useSuspenseQuery(packQuery(shutdownId, packId ?? ''));
  // Each recorded reading begins an empty form; a reading of somebody else leaves what is typed.
  const [round, setRound] = useState(0);
  return (
    <div className={styles.page}>
      <PageHeader
        title={text('title', { number: pack.number })}
        over={<Link href={addresses.pack(shutdownId, pack.packId)}>{text('to-pack')}</Link>}
        sub={text('pressure-and-hold', {
          way: trade.word('proof', pack.way),
          medium: pack.medium,
          pressure: format.quantity('pressure', pack.pressure_MPa),
          hold: format.duration(pack.hold_min),
        })}
      />
      <Notice kind="stop" title={text('stand-clear-title')}>
        <p>{text('stand-clear')}</p>
      </Notice>
      <NotClosedNotice pack={pack} />
      {pack.state === 'planned' || pack.state === 'ready' ? (
        <PackRelease pack={pack} />
      ) : (
        <>
          <p>
            {pack.released &&
              text('released-by', {
                who: pack.released.by?.name ?? text('name-erased'),
                when: format.dayTime(pack.released.at),
              })}
          </p>
          <PackReading key={round} pack={pack} onRecorded={() => setRound(round + 1)} />
          <ProvePack pack={pack} />
        </>
      )}
    </div>
  );
}
