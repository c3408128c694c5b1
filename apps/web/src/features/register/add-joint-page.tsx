import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { choicesQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useGo } from '../../app/use-go.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { emptyJoint, listedOf } from './joint-draft.ts';
import { JointForm } from './joint-form.tsx';

/** One more joint in the register. */
export function AddJointPage() {
  const text = useText('jointForm');
  const shutdownId = useShutdownId();
  const go = useGo();
  const { data: choices } = useSuspenseQuery(choicesQuery(shutdownId));
  const list = useCommand('joint-listed');
  const [ids] = useState(() => ({ jointId: newId(), placeId: newId(), makeId: newId() }));
  return (
    <>
      <PageHeader
        title={text('add-title')}
        over={<Link href={addresses.register(shutdownId)}>{text('register')}</Link>}
      />
      <JointForm
        isNew
        start={emptyJoint}
        choices={choices}
        sendLabel={text('add')}
        busy={list.isPending}
        error={list.error}
        onCancel={() => go(addresses.register(shutdownId))}
        onSend={(draft) =>
          list.mutate(
            { subjectId: ids.jointId, payload: listedOf(draft, ids.placeId, ids.makeId) },
            { onSuccess: () => go(addresses.joint(shutdownId, ids.jointId), { replace: true }) },
          )
        }
      />
    </>
  );
}
