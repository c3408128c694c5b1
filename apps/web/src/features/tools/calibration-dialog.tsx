import type { ToolRow } from '@seatwell/contract';
import { useState } from 'react';
import { FileField } from '../../app/file-field.tsx';
import { FormDialog } from '../../app/form-dialog.tsx';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { type PairDraft, readPairs } from './calibration-pairs.ts';
import { PairsField } from './pairs-field.tsx';
import styles from './tools.module.css';

const noPairs: readonly PairDraft[] = Array.from({ length: 4 }, () => ({ pressure: undefined, torque: undefined }));

/** Records a calibration with its certificate; a hydraulic wrench brings its chart of pressure and torque. */
export function CalibrationDialog({ tool, onClose }: { tool: ToolRow; onClose: () => void }) {
  const text = useText('tools');
  const format = useFormat();
  const record = useSiteCommand('calibration-recorded');
  const [calibrationId] = useState(newId);
  const [certificateNumber, setNumber] = useState('');
  const [calibratedOn, setCalibratedOn] = useState('');
  const [validThrough, setValidThrough] = useState('');
  const [provisional, setProvisional] = useState(false);
  const [certificate, setCertificate] = useState<string | null>(null);
  const [drafts, setDrafts] = useState(noPairs);
  const pairs = readPairs(drafts);
  const endsEarly = calibratedOn !== '' && validThrough !== '' && validThrough < calibratedOn;
  const missing = () => {
    if (certificateNumber.trim() === '' || calibratedOn === '' || validThrough === '' || endsEarly)
      return text('calibration-missing');
    if (provisional && certificate === null) return text('provisional-photo');
    return typeof pairs === 'string' ? text(`pairs-${pairs}`) : undefined;
  };
  const send = () => {
    if (typeof pairs === 'string') return;
    record.mutate(
      {
        subjectId: tool.toolId,
        payload: {
          calibrationId,
          toolId: tool.toolId,
          calibratedOn,
          validThrough,
          certificate,
          certificateNumber,
          provisional,
          pairs: pairs.map(({ pressure, torque }) => ({
            pressure_MPa: format.toHeld('pressure', pressure),
            torque_Nm: format.toHeld('torque', torque),
          })),
        },
      },
      { onSuccess: onClose },
    );
  };
  return (
    <FormDialog
      title={text('calibration-of', { tag: tool.tag })}
      sendLabel={text('save')}
      missing={missing()}
      busy={record.isPending}
      error={record.error}
      onSend={send}
      onClose={onClose}
    >
      <TextField label={text('certificate-number')} value={certificateNumber} onChange={setNumber} />
      <div className={styles.pair}>
        <DateField label={text('calibrated-on')} value={calibratedOn} onChange={setCalibratedOn} />
        <DateField
          label={text('valid-through')}
          value={validThrough}
          onChange={setValidThrough}
          error={endsEarly ? text('ends-early') : undefined}
        />
      </div>
      <FileField label={text('certificate-file')} onStored={setCertificate} />
      <Checkbox
        label={text('is-provisional')}
        detail={text('is-provisional-detail')}
        checked={provisional}
        onChange={setProvisional}
      />
      {tool.kind === 'hydraulic-wrench' && <PairsField value={drafts} onChange={setDrafts} />}
    </FormDialog>
  );
}
