import type { BatchAnswer, Role, ShutdownEventType, ShutdownPayload } from '@seatwell/contract';
import { useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useSigner } from '../../app/sign.ts';
import { useListCommand } from '../../app/use-command.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import { SignDialog } from '../../ui/sign-dialog.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { useRulesProblem } from '../work/rules-problem.ts';
import { NotYetList } from './not-yet-list.tsx';
import { type NotYet, type SignRow, type Tried, tryRows } from './sign-row.ts';
import styles from './signing.module.css';

export interface ListSigningProps<T extends ShutdownEventType> {
  readonly type: T;
  readonly rows: readonly SignRow[];
  readonly payloadOf: (row: SignRow) => ShutdownPayload<T>;
  readonly title: string;
  /** what the signature says, as it will be printed */
  readonly meaning: string;
  readonly label: string;
  readonly roles: readonly Role[];
  readonly missing?: string | undefined;
  readonly danger?: boolean;
}

/** One signature over a list: first what would stop it, joint by joint, then the secret, then what became of it. */
export function ListSigning<T extends ShutdownEventType>(props: ListSigningProps<T>) {
  const { type, rows, payloadOf, missing } = props;
  const text = useText('signing');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const signer = useSigner(...props.roles);
  const problem = useRulesProblem();
  const command = useListCommand(type);
  const [tried, setTried] = useState<Tried | null>(null);
  const [trying, setTrying] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const [open, setOpen] = useState(false);
  const [answer, setAnswer] = useState<BatchAnswer | null>(null);

  const look = async () => {
    setTrying(true);
    setFailure(undefined);
    setAnswer(null);
    command.reset();
    try {
      const result = await tryRows(shutdownId, type, rows, payloadOf);
      setTried(result);
      setOpen(result.ready.length > 0);
    } catch (error) {
      setFailure(error);
    }
    setTrying(false);
  };
  const sign = (secret: string, ids: readonly string[]) => {
    const chosen = (tried?.ready ?? []).filter((row) => ids.includes(row.jointId));
    command.mutate(
      {
        subjectId: shutdownId,
        mode: 'each',
        signature: { secret, meaning: props.meaning },
        rows: chosen.map((row) => ({
          jointId: row.jointId,
          makeId: row.makeId,
          versionSeen: row.version,
          payload: payloadOf(row),
        })),
      },
      {
        onSuccess: (given) => {
          setAnswer(given);
          setOpen(false);
          setTried(null);
        },
      },
    );
  };
  const refused: readonly NotYet[] = (answer?.refused ?? []).map((each) => ({
    row: { jointId: each.jointId, makeId: each.makeId, version: 0, tag: each.joint, detail: '' },
    failed: each.failed,
    problem: null,
  }));
  return (
    <div className={styles.group}>
      <ErrorNotice error={failure} />
      {tried && tried.notYet.length > 0 && (
        <NotYetList title={text('not-yet', { count: tried.notYet.length })} rows={tried.notYet} />
      )}
      {answer && (
        <Notice title={text('signed', { count: answer.recorded, joints: format.count(answer.recorded) })} live>
          {answer.jobId !== null && <p>{text('as-a-job')}</p>}
        </Notice>
      )}
      {refused.length > 0 && <NotYetList title={text('refused', { count: refused.length })} rows={refused} />}
      <StickyActionBar
        actions={
          <Button
            kind={props.danger ? 'stop' : 'primary'}
            size="large"
            wide
            busy={trying}
            disabledReason={missing ?? (rows.length === 0 ? text('none-ticked') : undefined)}
            onClick={() => void look()}
          >
            {props.label}
          </Button>
        }
      />
      <SignDialog
        open={open}
        onOpenChange={setOpen}
        title={props.title}
        meaning={props.meaning}
        signer={signer}
        items={(tried?.ready ?? []).map((row) => ({ id: row.jointId, label: row.tag, detail: row.detail }))}
        signLabel={text('sign')}
        busy={command.isPending}
        problem={problem(command.error)}
        onSign={({ secret, itemIds }) => sign(secret, itemIds)}
      />
    </div>
  );
}
