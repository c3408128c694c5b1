import type { PackPage, ProofWay } from '@seatwell/contract';
import { useState } from 'react';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { JointTicks } from '../signing/joint-ticks.tsx';
import { ListSigning } from '../signing/list-signing.tsx';
import styles from '../signing/signing.module.css';

/** The joints of the pack with a dry result, declared proven under one signature. */
export function ProvePack({ pack }: { pack: PackPage }) {
  const text = useText('testing');
  const trade = useTrade();
  const rows = pack.members
    .filter((member) => member.result === 'no-leak' && member.waitsFor.code === 'proof' && !member.cancelled)
    .map((member) => ({
      jointId: member.jointId,
      makeId: member.makeId,
      version: member.version,
      tag: member.tag,
      detail: [trade.word('stage', member.stage), trade.flange(member.size, member.rating), text('dry')].join(' · '),
    }));
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  if (!pack.readings.some((reading) => reading.holds)) return <p>{text('prove-needs-reading')}</p>;
  return (
    <section className={styles.group} aria-label={text('prove')}>
      <h2>{text('prove')}</h2>
      {rows.length === 0 ? (
        <p>{text('nothing-to-prove')}</p>
      ) : (
        <JointTicks rows={rows} ticked={ticked} onChange={setTicked} />
      )}
      <ListSigning
        type="proven"
        rows={rows.filter((row) => ticked.has(row.jointId))}
        payloadOf={() => ({ way: pack.way as ProofWay, packId: pack.packId, remark: null })}
        title={text('prove')}
        meaning={text('prove-meaning', { number: pack.number })}
        label={text('prove-sign')}
        roles={['inspector']}
      />
    </section>
  );
}
