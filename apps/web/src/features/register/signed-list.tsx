import type { BatchAnswer } from '@seatwell/contract';
import { useProblemDetails } from '../../app/error-notice.tsx';
import type { ListInput } from '../../app/send-command.ts';
import { useSigner } from '../../app/sign.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { SignDialog } from '../../ui/sign-dialog.tsx';
import { ListResult } from './list-result.tsx';
import { listRows } from './list-rows.ts';
import type { SelectedJoint } from './selection.ts';

interface Props<Payload> {
  readonly title: string;
  readonly meaning: string;
  readonly signLabel: string;
  readonly roles: readonly string[];
  readonly joints: readonly SelectedJoint[];
  readonly subjectId: string;
  readonly payload: Payload;
  readonly command: {
    readonly mutate: (input: ListInput<Payload>) => void;
    readonly data: BatchAnswer | undefined;
    readonly error: unknown;
    readonly isPending: boolean;
  };
  readonly onClose: () => void;
}

/** Signs one decision over a list that the signer sees and may untick; then tells what became of each joint. */
export function SignedList<Payload>(props: Props<Payload>) {
  const text = useText('register');
  const signer = useSigner(...props.roles);
  const problem = useProblemDetails()(props.command.error);
  const { joints, command, meaning } = props;
  if (command.data) {
    return (
      <Dialog
        open
        onOpenChange={(open) => open || props.onClose()}
        title={props.title}
        actions={
          <Button kind="primary" onClick={props.onClose}>
            {text('close')}
          </Button>
        }
      >
        <ListResult answer={command.data} />
      </Dialog>
    );
  }
  return (
    <SignDialog
      open
      onOpenChange={(open) => open || props.onClose()}
      title={props.title}
      meaning={meaning}
      signer={signer}
      items={joints.filter((joint) => joint.makeId !== null).map(({ jointId, tag }) => ({ id: jointId, label: tag }))}
      signLabel={props.signLabel}
      busy={command.isPending}
      problem={problem}
      onSign={({ secret, itemIds }) => {
        const signed = new Set(itemIds);
        command.mutate({
          subjectId: props.subjectId,
          mode: 'each',
          signature: { secret, meaning },
          rows: listRows(
            joints.filter((joint) => signed.has(joint.jointId)),
            props.payload,
          ),
        });
      }}
    />
  );
}
