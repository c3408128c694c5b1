import { useEffect, useRef, useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { TextField } from '../../ui/text-field.tsx';

const calm_ms = 300;

/** Finds joints by a part of tag, line, location or item; asks once the typing rests. */
export function FindField({ value, onChange }: { value: string; onChange: (value: string) => void }) {
  const text = useText('register');
  const [typed, setTyped] = useState(value);
  const change = useRef(onChange);
  change.current = onChange;

  useEffect(() => setTyped(value), [value]);
  useEffect(() => {
    if (typed.trim() === value) return;
    const timer = setTimeout(() => change.current(typed.trim()), calm_ms);
    return () => clearTimeout(timer);
  }, [typed, value]);

  return <TextField label={text('find')} type="search" value={typed} onChange={setTyped} />;
}
