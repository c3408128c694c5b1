import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { choicesQuery, jointQuery } from '../../app/reads.ts';
import { useCommand } from '../../app/use-command.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { jointState } from '../joint/shown-make.ts';
import { draftOf, type JointDraft, specificationOf, whereaboutsOf } from './joint-draft.ts';
import { JointForm } from './joint-form.tsx';

/** Changes what the register says of a joint; a target whose inputs change is then out of date. */
export function EditJointPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('jointForm');
  const shutdownId = useShutdownId();
  const go = useGo();
  const { jointId = '' } = useParams({ strict: false });
  const { data: page } = useSuspenseQuery(jointQuery(shutdownId, jointId));
  const { data: choices } = useSuspenseQuery(choicesQuery(shutdownId));
  const specify = useCommand('joint-specified');
  const [reason, setReason] = useState('');
  // What the form began with: a change by somebody else meanwhile is refused as stale, and not overwritten.
  const [start] = useState(() => ({ draft: draftOf(jointState(page)), version: page.joint.version }));
  const back = addresses.joint(shutdownId, jointId);
  const send = (draft: JointDraft) => {
    if (draft.criticality === '') return;
    specify.mutate(
      {
        subjectId: jointId,
        versionSeen: start.version,
        payload: {
          tag: draft.tag.trim(),
          kind: draft.kind,
          criticality: draft.criticality,
          whereabouts: whereaboutsOf(draft),
          specification: specificationOf(draft),
          remark: draft.remark.trim() === '' ? null : draft.remark.trim(),
          reason: reason.trim() === '' ? null : reason.trim(),
        },
      },
      { onSuccess: () => go(back, { replace: true }) },
    );
  };
  return (
    <>
      <PageHeader
        title={text('edit-title', { tag: page.joint.tag })}
        over={<Link href={back}>{page.joint.tag}</Link>}
      />
      <JointForm
        isNew={false}
        start={start.draft}
        choices={choices}
        sendLabel={text('save')}
        missing={reasonAgainst(page.actions, 'joint-specified')}
        busy={specify.isPending}
        error={specify.error}
        onCancel={() => go(back)}
        onSend={send}
      >
        <TextField label={text('reason')} optional lines={2} value={reason} onChange={setReason} />
      </JointForm>
    </>
  );
}
