import { type FormEvent, useEffect, useId, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { Button } from './button.tsx';
import { Checkbox } from './checkbox.tsx';
import { Dialog } from './dialog.tsx';
import { Problem, type ProblemDetails } from './problem.tsx';
import styles from './sign-dialog.module.css';
import { TextField } from './text-field.tsx';

export interface SignItem {
  readonly id: string;
  readonly label: string;
  readonly detail?: string;
}

export interface SignDialogProps {
  readonly open: boolean;
  readonly onOpenChange: (open: boolean) => void;
  readonly title: string;
  /** what the signature says, as it will be printed */
  readonly meaning: string;
  readonly signer: { readonly name: string; readonly role: string };
  /** everything that is signed; the signer sees it and may untick */
  readonly items: readonly SignItem[];
  readonly signLabel: string;
  readonly secretLabel?: string;
  readonly busy?: boolean;
  readonly problem?: ProblemDetails | undefined;
  readonly onSign: (signed: { readonly secret: string; readonly itemIds: readonly string[] }) => void;
}

/** The moment of signing: meaning, what is signed, who signs, and the secret that makes it theirs. */
export function SignDialog(props: SignDialogProps) {
  // Mounted only while open: secret and unticked items never outlive the dialog.
  return props.open ? <OpenSignDialog {...props} /> : null;
}

function OpenSignDialog(props: SignDialogProps) {
  const { open, items, meaning, signer, problem, busy = false } = props;
  const text = useText('ui');
  const formId = useId();
  const [secret, setSecret] = useState('');
  const [unticked, setUnticked] = useState<ReadonlySet<string>>(new Set());
  const signed = items.filter((item) => !unticked.has(item.id));

  // After a refused attempt the secret is entered anew.
  useEffect(() => {
    if (problem) setSecret('');
  }, [problem]);

  let reason: string | undefined;
  if (signed.length === 0) reason = text('sign-nothing');
  else if (secret === '') reason = text('sign-secret-missing');

  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (reason === undefined && !busy) props.onSign({ secret, itemIds: signed.map((item) => item.id) });
  };
  const tick = (id: string, on: boolean) =>
    setUnticked((current) => new Set(on ? [...current].filter((each) => each !== id) : [...current, id]));

  return (
    <Dialog
      open={open}
      onOpenChange={props.onOpenChange}
      title={props.title}
      actions={
        <>
          <Button onClick={() => props.onOpenChange(false)}>{text('cancel')}</Button>
          <FormButton formId={formId} busy={busy} reason={reason} label={props.signLabel} />
        </>
      }
    >
      <form id={formId} className={styles.form} onSubmit={submit}>
        <p className={styles.meaning}>{meaning}</p>
        <fieldset className={styles.list}>
          <legend>{text('sign-list')}</legend>
          {items.map((item) => (
            <div key={item.id} className={styles.item}>
              <Checkbox
                label={item.label}
                detail={item.detail}
                checked={!unticked.has(item.id)}
                onChange={(on) => tick(item.id, on)}
              />
            </div>
          ))}
        </fieldset>
        <p role="status" className={styles.soft}>
          {text('sign-count', { count: signed.length, total: items.length })}
        </p>
        {problem && <Problem problem={problem} />}
        <p>{text('signed-as', signer)}</p>
        <TextField
          label={props.secretLabel ?? text('sign-secret')}
          type="password"
          autoComplete="current-password"
          value={secret}
          onChange={setSecret}
        />
      </form>
    </Dialog>
  );
}

interface FormButtonProps {
  readonly formId: string;
  readonly busy: boolean;
  readonly reason: string | undefined;
  readonly label: string;
}

// The button stands outside the form, in the dialog's foot, so it sends the form itself.
function FormButton({ formId, busy, reason, label }: FormButtonProps) {
  const send = () => {
    const form = document.getElementById(formId);
    if (form instanceof HTMLFormElement) form.requestSubmit();
  };
  return (
    <Button kind="primary" busy={busy} disabledReason={reason} onClick={send}>
      {label}
    </Button>
  );
}
