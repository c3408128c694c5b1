import type { RegisterAnswer } from '@seatwell/contract';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { Combobox } from '../ui/combobox.tsx';
import type { FieldProps } from '../ui/field.tsx';
import { request, withQuery } from './api-client.ts';
import { shutdownKey } from './query-client.ts';
import { useShutdownId } from './use-shutdown.ts';
import { useTrade } from './use-trade.ts';

interface Props extends FieldProps {
  readonly value: string;
  readonly onChange: (jointId: string) => void;
  /** joints that cannot be meant */
  readonly without?: string;
}

/** A joint of the shutdown, found by a part of its tag, line or item. */
export function JointField({ value, onChange, without, ...field }: Props) {
  const shutdownId = useShutdownId();
  const trade = useTrade();
  const [search, setSearch] = useState('');
  const [label, setLabel] = useState('');
  const asked = useDeferredValue(search);
  const found = useQuery({
    queryKey: shutdownKey(shutdownId, 'joint-field', asked),
    queryFn: ({ signal }) =>
      request<RegisterAnswer>(withQuery(`/shutdowns/${shutdownId}/joints`, { search: asked, limit: 30 }), { signal }),
    placeholderData: keepPreviousData,
  });
  const options = (found.data?.rows ?? [])
    .filter((row) => row.jointId !== without)
    .map((row) => ({ value: row.jointId, label: row.tag, detail: trade.flange(row.size, row.rating) }));
  return (
    <Combobox
      {...field}
      value={value}
      valueLabel={label}
      options={options}
      onSearch={setSearch}
      onChange={(jointId) => {
        setLabel(options.find((option) => option.value === jointId)?.label ?? '');
        onChange(jointId);
      }}
    />
  );
}
