import type { BatchAnswer } from '@seatwell/contract';
import type { ReactNode } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { ListResult } from './list-result.tsx';
import { withoutMake } from './list-rows.ts';
import styles from './register.module.css';
import type { SelectedJoint } from './selection.ts';

interface Props {
  readonly title: string;
  readonly joints: readonly SelectedJoint[];
  readonly children: ReactNode;
  readonly answer: BatchAnswer | undefined;
  readonly error: unknown;
  readonly busy: boolean;
  readonly sendLabel: string;
  /** why it cannot be sent yet */
  readonly missing: string | undefined;
  readonly onSend: () => void;
  readonly onClose: () => void;
}

/** A decision over a list of joints: what is decided, then what became of each. */
export function ListDialog(props: Props) {
  const text = useText('register');
  const left = withoutMake(props.joints);
  return (
    <Dialog
      open
      onOpenChange={(open) => open || props.onClose()}
      title={props.title}
      actions={
        props.answer ? (
          <Button kind="primary" onClick={props.onClose}>
            {text('close')}
          </Button>
        ) : (
          <>
            <Button onClick={props.onClose}>{text('cancel')}</Button>
            <Button kind="primary" busy={props.busy} disabledReason={props.missing} onClick={props.onSend}>
              {props.sendLabel}
            </Button>
          </>
        )
      }
    >
      {props.answer ? (
        <ListResult answer={props.answer} />
      ) : (
        <div className={styles.form}>
          {left > 0 && <p>{text('no-make', { count: left })}</p>}
          {props.children}
          <ErrorNotice error={props.error} />
        </div>
      )}
    </Dialog>
  );
}
