import type { HistoryEntry, JointPage } from '@seatwell/contract';
import { useState } from 'react';
import { siteInstant, siteMinute } from '../../app/site-time.ts';
import { useCommand } from '../../app/use-command.ts';
import { useCurrentShutdown } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { choicesOf } from './choices-of.ts';
import { correctable, corrected, valueAt } from './correctable.ts';
import { DecisionDialog } from './decision-dialog.tsx';
import { useCodeWord } from './use-code-word.ts';
import { useEventSentence } from './use-event-sentence.ts';

// A time as the API writes it.
const instant = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/;

interface Props {
  readonly page: JointPage;
  readonly entry: HistoryEntry;
  readonly onClose: () => void;
}

/** Replaces a fact by the right one: every number, word and tick of it can be changed. */
export function CorrectDialog({ page, entry, onClose }: Props) {
  const text = useText('joint');
  const sentence = useEventSentence();
  const word = useCodeWord();
  const correct = useCommand('corrected');
  const timeZone = useCurrentShutdown()?.timeZone ?? 'UTC';
  const [payload, setPayload] = useState(entry.payload as Record<string, unknown>);
  // From the record itself: a value that is changed twice follows the record's own unit.
  const fields = correctable(entry.payload).map((field) => ({ ...field, value: valueAt(payload, field.path) }));
  const changed = JSON.stringify(payload) !== JSON.stringify(entry.payload);
  return (
    <DecisionDialog
      title={text('correct-title')}
      description={text('correct-detail', { what: sentence(entry) })}
      sendLabel={text('amend-correct')}
      reasonLabel={text('correct-reason')}
      missing={changed ? undefined : text('correct-nothing')}
      busy={correct.isPending}
      error={correct.error}
      onClose={onClose}
      onSend={({ reason }) =>
        correct.mutate(
          {
            subjectId: page.joint.jointId,
            makeId: entry.makeId,
            payload: { eventId: entry.eventId, payload, reason },
          },
          { onSuccess: onClose },
        )
      }
    >
      {fields.map((field) => {
        const { path, label, value } = field;
        const change = (next: string | number | boolean) =>
          setPayload((current) => corrected(current, field, next) as Record<string, unknown>);
        const key = path.join('.');
        if (typeof value === 'boolean') return <Checkbox key={key} label={label} checked={value} onChange={change} />;
        if (typeof value === 'number')
          return (
            <NumberField
              key={key}
              label={label}
              value={value}
              onChange={(next) => next !== undefined && change(next)}
            />
          );
        if (instant.test(value))
          return (
            <DateField
              key={key}
              kind="datetime-local"
              label={label}
              hint={text('site-time', { zone: timeZone })}
              value={siteMinute(new Date(value), timeZone)}
              onChange={(picked) => picked !== '' && change(siteInstant(picked, timeZone))}
            />
          );
        const choices = choicesOf(entry.type, path);
        if (choices) {
          const options = choices.map((code) => ({ value: code, label: word(path, code) }));
          return <Select key={key} label={label} value={value} options={options} onChange={change} />;
        }
        return <TextField key={key} label={label} value={value} onChange={change} />;
      })}
    </DecisionDialog>
  );
}
