import type { CalcTargetResponse } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { WorkingSteps } from './working-steps.tsx';

/** Every step of the calculation: an engineer can follow it by hand. */
export function WorkingDialog({ answer, onClose }: { answer: CalcTargetResponse; onClose: () => void }) {
  const text = useText('joint');
  return (
    <Dialog
      open
      wide
      onOpenChange={(open) => open || onClose()}
      title={text('working-and-sources')}
      description={text('working-detail')}
      actions={
        <Button kind="primary" onClick={onClose}>
          {text('close')}
        </Button>
      }
    >
      <WorkingSteps caption={text('working-and-sources')} captionHidden steps={answer.working ?? []} />
    </Dialog>
  );
}
