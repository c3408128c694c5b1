import type { ChoicesAnswer } from '@seatwell/contract';
import { type ReactNode, useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { FieldGroup } from '../../ui/field-group.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { FlangeFields } from './flange-fields.tsx';
import { GasketFields } from './gasket-fields.tsx';
import { type JointDraft, jointMissing } from './joint-draft.ts';
import styles from './joint-form.module.css';
import { LimitFields } from './limit-fields.tsx';
import { MakeFields } from './make-fields.tsx';
import { PlaceFields } from './place-fields.tsx';
import { ServiceFields } from './service-fields.tsx';
import { StackFields } from './stack-fields.tsx';

export interface DraftProps {
  readonly draft: JointDraft;
  readonly onChange: (part: Partial<JointDraft>) => void;
}

interface Props {
  readonly start: JointDraft;
  readonly choices: ChoicesAnswer;
  /** a new joint comes with its first make */
  readonly isNew: boolean;
  readonly sendLabel: string;
  /** asked for where a joint is changed */
  readonly children?: ReactNode;
  readonly missing?: string | undefined;
  readonly busy: boolean;
  readonly error: unknown;
  readonly onSend: (draft: JointDraft) => void;
  readonly onCancel: () => void;
}

/** Everything that the register says of a joint; the standard fills the bolts in, and asks where it leaves them open. */
export function JointForm(props: Props) {
  const text = useText('jointForm');
  const [draft, setDraft] = useState(props.start);
  const change = (part: Partial<JointDraft>) => setDraft((current) => ({ ...current, ...part }));
  const lacking = jointMissing(draft);
  const missing = (lacking && text(lacking)) ?? props.missing;
  return (
    <>
      <div className={styles.form}>
        <PlaceFields draft={draft} onChange={change} choices={props.choices} />
        <FlangeFields draft={draft} onChange={change} />
        <GasketFields draft={draft} onChange={change} />
        <StackFields draft={draft} onChange={change} />
        <ServiceFields draft={draft} onChange={change} />
        <LimitFields draft={draft} onChange={change} />
        {props.isNew && <MakeFields draft={draft} onChange={change} choices={props.choices} />}
        <TextField
          label={text('remark')}
          optional
          lines={2}
          value={draft.remark}
          onChange={(remark) => change({ remark })}
        />
        {props.children}
        <ErrorNotice error={props.error} />
      </div>
      <StickyActionBar
        actions={
          <>
            <Button onClick={props.onCancel}>{text('cancel')}</Button>
            <Button kind="primary" busy={props.busy} disabledReason={missing} onClick={() => props.onSend(draft)}>
              {props.sendLabel}
            </Button>
          </>
        }
      />
    </>
  );
}

/** One part of what the register says of a joint. */
export function JointFieldGroup({ legend, children }: { legend: string; children: ReactNode }) {
  return (
    <FieldGroup legend={legend}>
      <div className={styles.fields}>{children}</div>
    </FieldGroup>
  );
}
