import { useMemo } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';

/** The time zone of a site or shutdown, by its IANA name. */
export function TimeZoneField({ value, onChange }: { value: string; onChange: (value: string) => void }) {
  const text = useText('session');
  const options = useMemo(() => {
    const names = new Set([value, 'UTC', ...Intl.supportedValuesOf('timeZone')]);
    return [...names].filter(Boolean).map((name) => ({ value: name, label: name.replaceAll('_', ' ') }));
  }, [value]);
  return (
    <Combobox
      label={text('time-zone')}
      hint={text('time-zone-hint')}
      value={value}
      onChange={onChange}
      options={options}
    />
  );
}
