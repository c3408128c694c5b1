import type { JointPage, MakeAnswer, PunchCategory, Role, ShutdownPayload } from '@seatwell/contract';
import { useState } from 'react';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { DecisionDialog } from './decision-dialog.tsx';
import { jointState } from './shown-make.ts';

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly onClose: () => void;
}

const releasers = ['engineer', 'inspector', 'coordinator'] as const satisfies readonly Role[];

/** Stops all work on the joint until somebody entitled releases it. */
export function HoldDialog({ page, onClose }: Props) {
  const text = useText('joint');
  const trade = useTrade();
  const place = useFactCommand('hold-placed');
  const [releasedBy, setReleasedBy] = useState<(typeof releasers)[number]>('engineer');
  return (
    <DecisionDialog
      title={text('hold-title', { tag: page.joint.tag })}
      sendLabel={text('do-hold-placed')}
      reasonLabel={text('hold-reason')}
      busy={place.isPending}
      error={place.error}
      onClose={onClose}
      onSend={({ reason }) =>
        place.mutate(
          { subjectId: page.joint.jointId, label: page.joint.tag, payload: { holdId: newId(), reason, releasedBy } },
          { onSuccess: onClose },
        )
      }
    >
      <Select
        label={text('hold-released-by')}
        value={releasedBy}
        onChange={setReleasedBy}
        options={releasers.map((value) => ({ value, label: trade.word('role', value) }))}
      />
    </DecisionDialog>
  );
}

/** Lets the work go on, signed. */
export function ReleaseHoldDialog({ page, onClose }: Props) {
  const text = useText('joint');
  const release = useCommand('hold-released');
  const { holds } = jointState(page);
  const [holdId, setHoldId] = useState(holds[0]?.holdId ?? '');
  const hold = holds.find((each) => each.holdId === holdId);
  return (
    <DecisionDialog
      title={text('do-hold-released')}
      sendLabel={text('sign')}
      reasonLabel={text('release-reason')}
      meaning={text('hold-release-meaning', { tag: page.joint.tag, reason: hold?.reason ?? '' })}
      roles={hold ? [hold.releasedBy] : []}
      missing={hold ? undefined : text('no-hold')}
      busy={release.isPending}
      error={release.error}
      onClose={onClose}
      onSend={({ reason, signature }) =>
        release.mutate(
          { subjectId: page.joint.jointId, versionSeen: page.joint.version, signature, payload: { holdId, reason } },
          { onSuccess: onClose },
        )
      }
    >
      <Select
        label={text('hold')}
        value={holdId}
        onChange={setHoldId}
        options={holds.map((each) => ({ value: each.holdId, label: each.reason }))}
      />
    </DecisionDialog>
  );
}

/** Something to be put right: A before test or start-up, B before hand-over, C after. */
export function PunchDialog({ page, onClose }: Props) {
  const text = useText('joint');
  const raise = useFactCommand('punch-raised');
  const [category, setCategory] = useState<PunchCategory | ''>('');
  const [owner, setOwner] = useState('');
  return (
    <DecisionDialog
      title={text('punch-title', { tag: page.joint.tag })}
      sendLabel={text('do-punch-raised')}
      reasonLabel={text('punch-text')}
      missing={category === '' ? text('category-needed') : undefined}
      busy={raise.isPending}
      error={raise.error}
      onClose={onClose}
      onSend={({ reason }) => {
        const punchId = newId();
        if (category === '') return;
        raise.mutate(
          {
            subjectId: punchId,
            label: page.joint.tag,
            lane: page.joint.jointId,
            payload: {
              punchId,
              category,
              text: reason,
              jointId: page.joint.jointId,
              packId: null,
              systemId: null,
              owner: owner.trim() === '' ? null : owner.trim(),
            },
          },
          { onSuccess: onClose },
        );
      }}
    >
      <RadioCards
        label={text('category')}
        value={category}
        onChange={setCategory}
        options={(['A', 'B', 'C'] as const).map((value) => ({
          value,
          label: value,
          detail: text(`category-${value}`),
        }))}
      />
      <TextField label={text('punch-owner')} optional value={owner} onChange={setOwner} />
    </DecisionDialog>
  );
}

const whys = ['duplicate', 'not-found', 'welded-up', 'not-opened'] as const;

/** There is no work on this joint. */
export function VoidDialog({ page, onClose }: Props) {
  const text = useText('joint');
  const trade = useTrade();
  const voiding = useCommand('joint-voided');
  const [why, setWhy] = useState<ShutdownPayload<'joint-voided'>['why'] | ''>('');
  return (
    <DecisionDialog
      danger
      title={text('void-title', { tag: page.joint.tag })}
      description={text('void-detail')}
      sendLabel={text('do-joint-voided')}
      reasonLabel={text('reason')}
      missing={why === '' ? text('void-why-needed') : undefined}
      busy={voiding.isPending}
      error={voiding.error}
      onClose={onClose}
      onSend={({ reason }) => {
        if (why === '') return;
        voiding.mutate(
          { subjectId: page.joint.jointId, versionSeen: page.joint.version, payload: { why, reason } },
          { onSuccess: onClose },
        );
      }}
    >
      <Select
        label={text('void-why')}
        value={why}
        onChange={setWhy}
        options={whys.map((value) => ({ value, label: trade.word('void', value) }))}
      />
    </DecisionDialog>
  );
}

/** This closing is not made. */
export function CancelMakeDialog({ page, make, onClose }: Props) {
  const text = useText('joint');
  const cancel = useCommand('make-cancelled');
  if (!make) return null;
  return (
    <DecisionDialog
      danger
      title={text('cancel-make-title', { tag: page.joint.tag, number: make.number })}
      sendLabel={text('do-make-cancelled')}
      reasonLabel={text('reason')}
      busy={cancel.isPending}
      error={cancel.error}
      onClose={onClose}
      onSend={({ reason }) =>
        cancel.mutate(
          {
            subjectId: page.joint.jointId,
            makeId: make.makeId,
            versionSeen: page.joint.version,
            payload: { reason },
          },
          { onSuccess: onClose },
        )
      }
    />
  );
}
