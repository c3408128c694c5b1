import { useText } from '../../texts/text-provider.tsx';
import { TextField } from '../../ui/text-field.tsx';

/** Bolt numbers as they are typed: 3, 4 and 7-9; null where that cannot be read or is not on the flange. */
export function boltNumbers(typed: string, count: number): readonly number[] | null {
  const parts = typed.split(/[\s,;]+/).filter(Boolean);
  const found = new Set<number>();
  for (const part of parts) {
    const match = /^(\d+)(?:[-–](\d+))?$/.exec(part);
    if (!match) return null;
    const from = Number(match[1]);
    const to = Number(match[2] ?? match[1]);
    if (from < 1 || to < from || to > count) return null;
    for (let bolt = from; bolt <= to; bolt++) found.add(bolt);
  }
  return [...found].sort((a, b) => a - b);
}

export function BoltsField(props: { label: string; count: number; value: string; onChange: (value: string) => void }) {
  const text = useText('work');
  const bad = props.value.trim() !== '' && boltNumbers(props.value, props.count) === null;
  return (
    <TextField
      label={props.label}
      hint={text('bolts-hint')}
      error={bad ? text('bolts-unreadable', { count: props.count }) : undefined}
      value={props.value}
      onChange={props.onChange}
    />
  );
}
