import type { ToolRow, ToolsAnswer } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { fileAddress } from '../../app/file-field.tsx';
import { toolJointsQuery } from '../../app/reads.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/dialog.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Link } from '../../ui/link.tsx';
import { Table } from '../../ui/table.tsx';
import { CalibrationDialog } from './calibration-dialog.tsx';
import { FailedDialog } from './failed-dialog.tsx';
import styles from './tools.module.css';
import { Scale, ToolState } from './tools-page.tsx';

interface Props {
  readonly tool: ToolRow;
  readonly actions: ToolsAnswer['actions'];
  readonly onClose: () => void;
}

/** One tool: its scale, its calibrations with their certificates, and what was found wrong with it. */
export function ToolSheet({ tool, actions, onClose }: Props) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('tools');
  const trade = useTrade();
  const format = useFormat();
  const [asking, setAsking] = useState<'calibration' | 'failed' | null>(null);
  const stop = () => setAsking(null);
  if (asking === 'calibration') return <CalibrationDialog tool={tool} onClose={stop} />;
  if (asking === 'failed') return <FailedDialog tool={tool} onClose={stop} />;
  return (
    <Sheet
      open
      wide
      onOpenChange={(open) => open || onClose()}
      title={tool.tag}
      description={[trade.word('tool', tool.kind), tool.maker].filter(Boolean).join(', ')}
      actions={
        <>
          <Button disabledReason={reasonAgainst(actions, 'tool-failed')} onClick={() => setAsking('failed')}>
            {text('report-failed')}
          </Button>
          <Button
            kind="primary"
            disabledReason={reasonAgainst(actions, 'calibration-recorded')}
            onClick={() => setAsking('calibration')}
          >
            {text('record-calibration')}
          </Button>
        </>
      }
    >
      <KeyValues
        items={[
          { name: text('state'), value: <ToolState row={tool} /> },
          { name: text('scale'), value: <Scale row={tool} /> },
          ...(tool.failedOn === null ? [] : [{ name: text('failed-on'), value: format.datedDay(tool.failedOn) }]),
        ]}
      />
      {tool.failedOn !== null && <JointsInDoubt toolId={tool.toolId} />}
      <Calibrations tool={tool} actions={actions} />
      {tool.inForce !== null && tool.inForce.pairs.length > 0 && <Pairs pairs={tool.inForce.pairs} />}
    </Sheet>
  );
}

function Calibrations({ tool, actions }: Pick<Props, 'tool' | 'actions'>) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('tools');
  const format = useFormat();
  const clear = useSiteCommand('calibration-cleared');
  return (
    <>
      <Table
        caption={text('calibrations')}
        rows={tool.calibrations}
        rowKey={(row) => row.calibrationId}
        empty={text('no-calibrations')}
        columns={[
          {
            key: 'number',
            header: text('certificate-number'),
            rowHeader: true,
            cell: (row) =>
              row.certificate === null ? (
                row.certificateNumber
              ) : (
                <a href={fileAddress(row.certificate)} target="_blank" rel="noreferrer">
                  {row.certificateNumber}
                </a>
              ),
          },
          {
            key: 'valid',
            header: text('valid'),
            cell: (row) =>
              text('from-through', {
                from: format.datedDay(row.calibratedOn),
                through: format.datedDay(row.validThrough),
              }),
          },
          {
            key: 'provisional',
            header: text('provisional'),
            cell: (row) => {
              if (!row.provisional) return '';
              if (row.clearedAt !== null) return text('cleared-at', { at: format.dayTime(row.clearedAt) });
              return (
                <Button
                  kind="quiet"
                  label={text('clear-of', { number: row.certificateNumber })}
                  busy={clear.isPending}
                  disabledReason={reasonAgainst(actions, 'calibration-cleared')}
                  onClick={() =>
                    clear.mutate({
                      subjectId: row.calibrationId,
                      payload: { calibrationId: row.calibrationId },
                    })
                  }
                >
                  {text('clear')}
                </Button>
              );
            },
          },
        ]}
      />
      <ErrorNotice error={clear.error} />
    </>
  );
}

/** What a tool found wrong tightened since its last good calibration, in every shutdown. */
function JointsInDoubt({ toolId }: { toolId: string }) {
  const text = useText('tools');
  const trade = useTrade();
  const joints = useQuery(toolJointsQuery(toolId));
  return (
    <>
      <ErrorNotice error={joints.error} />
      {joints.data && (
        <Table
          caption={text('joints-in-doubt')}
          rows={joints.data.rows}
          rowKey={(row) => `${row.jointId} ${row.makeNumber}`}
          empty={text('no-joint-in-doubt')}
          columns={[
            {
              key: 'joint',
              header: text('joint'),
              rowHeader: true,
              cell: (row) => <Link href={addresses.joint(row.shutdownId, row.jointId)}>{row.tag}</Link>,
            },
            { key: 'shutdown', header: text('shutdown'), cell: (row) => row.shutdown },
            {
              key: 'stage',
              header: text('stage'),
              cell: (row) => <StageWord stage={row.stage}>{trade.word('stage', row.stage)}</StageWord>,
            },
          ]}
        />
      )}
    </>
  );
}

function Pairs({ pairs }: { pairs: readonly { pressure_MPa: number; torque_Nm: number }[] }) {
  const text = useText('tools');
  const format = useFormat();
  return (
    <div className={styles.pairs}>
      <Table
        caption={text('pairs')}
        rows={pairs}
        rowKey={(row) => String(row.pressure_MPa)}
        onPhone="table"
        columns={[
          {
            key: 'pressure',
            header: text('pressure'),
            numeric: true,
            cell: (row) => format.quantity('pressure', row.pressure_MPa),
          },
          {
            key: 'torque',
            header: text('torque'),
            numeric: true,
            cell: (row) => format.quantity('torque', row.torque_Nm),
          },
        ]}
      />
    </div>
  );
}
