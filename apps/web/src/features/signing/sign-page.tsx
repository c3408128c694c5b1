import type { MyJointRow } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { signatureOf } from '../my-joints/groups.ts';
import { myJointsQuery } from '../my-joints/my-joints-query.ts';
import { CheckSigning } from './check-signing.tsx';
import { JointTicks } from './joint-ticks.tsx';
import { ProveSigning } from './prove-signing.tsx';
import { ReleaseSigning } from './release-signing.tsx';
import type { SignRow } from './sign-row.ts';
import styles from './signing.module.css';
import { WitnessSigning } from './witness-signing.tsx';

/** What waits for one kind of signature of the person: tick, look, sign once. */
export function SignPage() {
  const text = useText('signing');
  const shutdownId = useShutdownId();
  const { what } = useParams({ strict: false });
  const { data } = useSuspenseQuery(myJointsQuery(shutdownId));
  const rowOf = useSignRow();
  const mine = data.rows.filter((row) => row.can === 'now' && row.makeId !== null && signatureOf(row) === what);
  const rows = mine.map(rowOf);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const chosen = rows.filter((row) => ticked.has(row.jointId));
  const chosenJoints = mine.filter((row) => ticked.has(row.jointId));
  if (what !== 'release' && what !== 'check' && what !== 'witness' && what !== 'prove')
    return <EmptyState title={text('no-such-list')} />;
  return (
    <div className={styles.page}>
      <PageHeader
        title={text(`title-${what}`)}
        over={<Link href={addresses.myJoints(shutdownId)}>{text('to-my-joints')}</Link>}
        sub={text(`sub-${what}`)}
      />
      {rows.length === 0 ? (
        <EmptyState title={text('nothing-to-sign')} />
      ) : (
        <JointTicks rows={rows} ticked={ticked} onChange={setTicked} />
      )}
      {what === 'release' && <ReleaseSigning rows={chosen} />}
      {what === 'check' && <CheckSigning rows={chosen} joints={chosenJoints} />}
      {what === 'witness' && <WitnessSigning rows={chosen} />}
      {what === 'prove' && <ProveSigning rows={chosen} joints={chosenJoints} />}
    </div>
  );
}

function useSignRow(): (row: MyJointRow) => SignRow {
  const trade = useTrade();
  return (row) => ({
    jointId: row.jointId,
    makeId: row.makeId ?? '',
    version: row.version,
    tag: row.tag,
    detail: [
      trade.word('stage', row.stage),
      trade.flange(row.size, row.rating),
      trade.bolts(row.boltCount, row.boltThread),
      row.location,
      trade.waitsFor(row.waitsFor),
    ]
      .filter(Boolean)
      .join(' · '),
  });
}
