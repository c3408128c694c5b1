import type { PermitRow } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { FormDialog } from '../../app/form-dialog.tsx';
import { permitsQuery } from '../../app/reads.ts';
import { sharedReason } from '../../app/shared-reason.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { PackWays } from '../packs/pack-ways.tsx';

/** Permits to work with the joints that they cover. They are recorded with the release of a list in the register. */
export function PermitsPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('permits');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(permitsQuery(shutdownId));
  const [withdrawing, setWithdrawing] = useState<PermitRow | null>(null);
  const against = sharedReason(
    reasonAgainst,
    data.rows.filter((row) => row.inForce),
    'permit-withdrawn',
  );
  const inForce = data.rows.filter((row) => row.inForce).length;
  return (
    <>
      <PageHeader
        over={<PackWays shutdownId={shutdownId} />}
        title={text('title', { count: inForce, shown: format.count(inForce) })}
        documentTitle={text('permits')}
        sub={
          <>
            {text('sub')}{' '}
            <Link href={addresses.register(shutdownId, { stage: 'engineered' })}>{text('to-release')}</Link>
          </>
        }
      />
      {against !== undefined && <p>{against}</p>}
      <Table
        caption={text('permits')}
        captionHidden
        rows={data.rows}
        rowKey={(row) => row.permitId}
        empty={text('none')}
        columns={[
          { key: 'number', header: text('number'), rowHeader: true, cell: (row) => row.number },
          { key: 'isolation', header: text('isolation'), cell: (row) => row.isolationReference },
          {
            key: 'valid',
            header: text('valid'),
            cell: (row) =>
              text('from-until', { from: format.dayTime(row.validFrom), until: format.dayTime(row.validUntil) }),
          },
          { key: 'state', header: text('state'), cell: (row) => <PermitState row={row} /> },
          { key: 'joints', header: text('joints'), cell: (row) => <Covered shutdownId={shutdownId} row={row} /> },
          ...(against === undefined
            ? [
                {
                  key: 'withdraw',
                  header: text('action'),
                  cell: (row: PermitRow) =>
                    row.inForce && (
                      <Button
                        kind="quiet"
                        label={text('withdraw-of', { number: row.number })}
                        disabledReason={reasonAgainst(row.actions, 'permit-withdrawn')}
                        onClick={() => setWithdrawing(row)}
                      >
                        {text('withdraw')}
                      </Button>
                    ),
                },
              ]
            : []),
        ]}
      />
      {withdrawing && <WithdrawDialog permit={withdrawing} onClose={() => setWithdrawing(null)} />}
    </>
  );
}

function PermitState({ row }: { row: PermitRow }) {
  const text = useText('permits');
  const format = useFormat();
  if (row.withdrawnAt !== null) return text('withdrawn', { at: format.dayTime(row.withdrawnAt) });
  return text(row.inForce ? 'in-force' : 'not-in-force');
}

const jointsShown = 4;

function Covered({ shutdownId, row }: { shutdownId: string; row: PermitRow }) {
  const text = useText('permits');
  const format = useFormat();
  const more = row.joints.length - jointsShown;
  return (
    <>
      {row.joints.slice(0, jointsShown).map((joint, index) => (
        <span key={joint.jointId}>
          {index > 0 && ', '}
          <Link href={addresses.joint(shutdownId, joint.jointId)}>{joint.tag}</Link>
        </span>
      ))}
      {more > 0 && ` ${text('more', { count: more, shown: format.count(more) })}`}
    </>
  );
}

function WithdrawDialog({ permit, onClose }: { permit: PermitRow; onClose: () => void }) {
  const text = useText('permits');
  const withdraw = useFactCommand('permit-withdrawn');
  const [reason, setReason] = useState('');
  return (
    <FormDialog
      title={text('withdraw-of', { number: permit.number })}
      description={text('withdraw-detail')}
      sendLabel={text('withdraw')}
      missing={reason.trim() === '' ? text('reason-needed') : undefined}
      busy={withdraw.isPending}
      error={withdraw.error}
      onSend={() =>
        withdraw.mutate(
          { subjectId: permit.permitId, label: permit.number, payload: { reason } },
          { onSuccess: onClose },
        )
      }
      onClose={onClose}
    >
      <TextField label={text('reason')} lines={2} value={reason} onChange={setReason} />
    </FormDialog>
  );
}
