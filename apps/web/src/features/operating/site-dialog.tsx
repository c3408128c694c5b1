import type { Me } from '@seatwell/contract';
import { useState } from 'react';
import { FormDialog } from '../../app/form-dialog.tsx';
import { useSiteCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { TimeZoneField } from '../session/time-zone-field.tsx';

/** Changes the site's name, time zone and units, on the record. Shutdowns keep their own zone and units. */
export function SiteDialog({ site, onClose }: { site: Me['site']; onClose: () => void }) {
  const text = useText('operating');
  const sessionText = useText('session');
  const change = useSiteCommand('site-settings-changed');
  const [name, setName] = useState(site.name);
  const [timeZone, setTimeZone] = useState(site.timeZone);
  const [units, setUnits] = useState(site.units);
  const [reason, setReason] = useState('');
  const changed = {
    ...(name.trim() === site.name ? {} : { name: name.trim() }),
    ...(timeZone === site.timeZone ? {} : { timeZone }),
    ...(units === site.units ? {} : { units }),
  };
  const missing =
    name.trim() === '' || timeZone === ''
      ? text('site-missing')
      : Object.keys(changed).length === 0
        ? text('nothing-changed')
        : undefined;
  const send = () =>
    change.mutate(
      { subjectId: site.siteId, payload: { ...changed, reason: reason.trim() || null } },
      { onSuccess: onClose },
    );
  return (
    <FormDialog
      title={text('change-site')}
      description={text('site-detail')}
      sendLabel={text('save')}
      missing={missing}
      busy={change.isPending}
      error={change.error}
      onSend={send}
      onClose={onClose}
    >
      <TextField label={sessionText('site-name')} value={name} onChange={setName} />
      <TimeZoneField value={timeZone} onChange={setTimeZone} />
      <Select
        label={sessionText('units')}
        value={units}
        onChange={setUnits}
        options={(['SI', 'US'] as const).map((value) => ({ value, label: sessionText(`units-${value}`) }))}
      />
      <TextField label={text('reason')} optional lines={2} value={reason} onChange={setReason} />
    </FormDialog>
  );
}
