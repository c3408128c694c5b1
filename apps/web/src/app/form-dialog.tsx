import { type FormEvent, type ReactNode, useId } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { ErrorNotice } from './error-notice.tsx';
import styles from './form-dialog.module.css';

export interface FormDialogProps {
  readonly title: string;
  readonly description?: string | undefined;
  readonly children: ReactNode;
  readonly sendLabel: string;
  /** why it cannot be sent yet */
  readonly missing?: string | undefined;
  readonly busy: boolean;
  readonly error: unknown;
  readonly onSend: () => void;
  readonly onClose: () => void;
  readonly wide?: boolean;
  /** of the way out, where it does something else than leave things as they are */
  readonly cancelLabel?: string;
  readonly onCancel?: () => void;
}

/** A thing to record: its fields, what is missing, what the server says, and the two ways out. Enter sends. */
export function FormDialog(props: FormDialogProps) {
  const text = useText('ui');
  const formId = useId();
  const send = () => {
    if (props.missing === undefined && !props.busy) props.onSend();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    send();
  };
  return (
    <Dialog
      open
      onOpenChange={(open) => open || props.onClose()}
      title={props.title}
      description={props.description}
      wide={props.wide ?? false}
      actions={
        <>
          <Button onClick={props.onCancel ?? props.onClose}>{props.cancelLabel ?? text('cancel')}</Button>
          <Button kind="primary" busy={props.busy} disabledReason={props.missing} onClick={send}>
            {props.sendLabel}
          </Button>
        </>
      }
    >
      <form id={formId} className={styles.form} onSubmit={submit} noValidate>
        {props.children}
        <ErrorNotice error={props.error} />
      </form>
    </Dialog>
  );
}
