import { type ReactNode, useState } from 'react';
import { useProblemDetails } from '../../app/error-notice.tsx';
import type { SignatureInput } from '../../app/send-command.ts';
import { useSigner } from '../../app/sign.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { Problem } from '../../ui/problem.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './joint.module.css';

interface Props {
  readonly title: string;
  readonly description?: string | undefined;
  readonly children?: ReactNode;
  readonly sendLabel: string;
  /** asked for, and printed; undefined = no reason belongs to it */
  readonly reasonLabel?: string;
  /** what is signed; undefined = it is not signed */
  readonly meaning?: string;
  readonly roles?: readonly string[];
  /** why it cannot be sent yet, beside reason and secret */
  readonly missing?: string | undefined;
  readonly busy: boolean;
  readonly error: unknown;
  readonly danger?: boolean;
  readonly onSend: (said: { reason: string; signature: SignatureInput | null }) => void;
  readonly onClose: () => void;
}

/** One decision or fact with its reason and, where it is signed, the signature. */
export function DecisionDialog(props: Props) {
  const text = useText('joint');
  const signer = useSigner(...(props.roles ?? []));
  const problem = useProblemDetails()(props.error);
  const [reason, setReason] = useState('');
  const [secret, setSecret] = useState('');
  const { reasonLabel, meaning } = props;
  const missing =
    props.missing ??
    (reasonLabel !== undefined && reason.trim() === '' ? text('reason-needed') : undefined) ??
    (meaning !== undefined && secret === '' ? text('secret-needed') : undefined);
  return (
    <Dialog
      open
      onOpenChange={(open) => open || props.onClose()}
      title={props.title}
      description={props.description}
      actions={
        <>
          <Button onClick={props.onClose}>{text('cancel')}</Button>
          <Button
            kind={props.danger ? 'stop' : 'primary'}
            busy={props.busy}
            disabledReason={missing}
            onClick={() =>
              props.onSend({ reason: reason.trim(), signature: meaning === undefined ? null : { secret, meaning } })
            }
          >
            {props.sendLabel}
          </Button>
        </>
      }
    >
      <div className={styles.form}>
        {props.children}
        {reasonLabel !== undefined && <TextField label={reasonLabel} lines={3} value={reason} onChange={setReason} />}
        {problem && <Problem problem={problem} />}
        {meaning !== undefined && (
          <>
            <p>{meaning}</p>
            <p className={styles.soft}>{text('signed-as', signer)}</p>
            <TextField
              label={text('secret')}
              type="password"
              autoComplete="current-password"
              value={secret}
              onChange={setSecret}
            />
          </>
        )}
      </div>
    </Dialog>
  );
}
