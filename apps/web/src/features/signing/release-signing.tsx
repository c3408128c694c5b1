import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { permitsQuery } from '../../app/reads.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { ListSigning } from './list-signing.tsx';
import { PermitForm } from './permit-form.tsx';
import type { SignRow } from './sign-row.ts';
import styles from './signing.module.css';

/** Operations' release to break: under a permit that covers every joint of the list. */
export function ReleaseSigning({ rows }: { rows: readonly SignRow[] }) {
  const text = useText('signing');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(permitsQuery(shutdownId));
  const [permitId, setPermitId] = useState('');
  const covers = (permit: (typeof data.rows)[number]) =>
    rows.every((row) => permit.joints.some((joint) => joint.jointId === row.jointId));
  const inForce = data.rows.filter((permit) => permit.inForce);
  const permit = inForce.find((each) => each.permitId === permitId);
  let missing: string | undefined;
  if (!permit) missing = text('missing-permit');
  else if (!covers(permit)) missing = text('permit-covers-not');
  return (
    <div className={styles.group}>
      <Notice kind="attention" title={text('release-means-title')}>
        <p>{text('release-means')}</p>
      </Notice>
      <RadioCards
        label={text('permit')}
        value={permitId}
        options={[
          ...inForce.map((each) => ({
            value: each.permitId,
            label: each.number,
            detail: text('permit-detail', {
              isolation: each.isolationReference ?? text('no-isolation'),
              until: format.dayTime(each.validUntil),
            }),
            disabledReason: rows.length > 0 && !covers(each) ? text('permit-covers-not') : undefined,
          })),
          { value: 'new', label: text('permit-new'), detail: text('permit-new-detail') },
        ]}
        onChange={setPermitId}
      />
      {permitId === 'new' && <PermitForm rows={rows} onRecorded={setPermitId} />}
      <ListSigning
        type="break-released"
        rows={rows}
        payloadOf={() => ({ permitId, remark: null })}
        title={text('title-release')}
        meaning={text('meaning-release', { permit: permit?.number ?? '' })}
        label={text('release-listed')}
        roles={['operations']}
        missing={missing}
      />
    </div>
  );
}
