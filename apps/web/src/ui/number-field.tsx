import { localeOf } from '@seatwell/contract';
import { useEffect, useState } from 'react';
import { parseNumber } from '../format/parse-number.ts';
import { useLanguage, useText } from '../texts/text-provider.tsx';
import { classNames } from './class-names.ts';
import styles from './field.module.css';
import { ControlBox, Field, type FieldProps } from './field.tsx';

export interface NumberFieldProps extends FieldProps {
  /** in the unit shown; undefined when empty or not readable */
  readonly value: number | undefined;
  readonly onChange: (value: number | undefined) => void;
  readonly unit?: string;
  readonly least?: number | undefined;
  readonly most?: number | undefined;
  readonly decimals?: number;
}

/**
 * A number with its unit. Takes decimal comma and point; asks back where a mark could separate thousands;
 * says when a limit is crossed, and never changes what was typed.
 */
export function NumberField({ value, onChange, unit, least, most, decimals = 6, ...field }: NumberFieldProps) {
  const text = useText('ui');
  const { language } = useLanguage();
  const mark = decimalMarkOf(language);
  const show = (shown: number) =>
    new Intl.NumberFormat(localeOf(language), {
      useGrouping: false,
      maximumFractionDigits: decimals,
    }).format(shown);
  const [typed, setTyped] = useState(value === undefined ? '' : show(value));
  const parsed = parseNumber(typed, mark);

  // A value set from outside replaces the text, unless the text already says the same.
  useEffect(() => {
    setTyped((current) => {
      const now = parseNumber(current, mark);
      const same = now.kind === 'number' ? now.value === value : value === undefined;
      if (same) return current;
      return value === undefined ? '' : formatPlain(value, language, decimals);
    });
  }, [value, mark, language, decimals]);

  const limits = [
    least === undefined ? undefined : text('least', { limit: show(least) }),
    most === undefined ? undefined : text('most', { limit: show(most) }),
  ].filter((limit) => limit !== undefined);

  let error = field.error;
  if (parsed.kind === 'not-a-number') error = text('number-not', { entered: typed });
  if (parsed.kind === 'ambiguous') {
    const [first, second] = parsed.readings;
    error = text('number-ambiguous', {
      entered: typed,
      first: show(first),
      second: show(second),
    });
  }
  if (parsed.kind === 'number' && least !== undefined && parsed.value < least) {
    error = text('number-under', { entered: typed, limit: show(least) });
  }
  if (parsed.kind === 'number' && most !== undefined && parsed.value > most) {
    error = text('number-over', { entered: typed, limit: show(most) });
  }
  const hint = field.hint ?? (limits.length > 0 ? limits.join(' · ') : undefined);

  const change = (next: string) => {
    setTyped(next);
    const read = parseNumber(next, mark);
    onChange(read.kind === 'number' ? read.value : undefined);
  };

  return (
    <Field {...field} error={error} hint={hint} label={unit === undefined ? field.label : `${field.label}, ${unit}`}>
      {(control) => (
        <ControlBox invalid={error !== undefined} disabled={field.disabled}>
          <input
            {...control}
            className={classNames(styles.input, styles.number)}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={typed}
            onChange={(event) => change(event.target.value)}
          />
          {unit !== undefined && (
            <span className={styles.unit} aria-hidden="true">
              {unit}
            </span>
          )}
        </ControlBox>
      )}
    </Field>
  );
}

function decimalMarkOf(language: string): '.' | ',' {
  const part = new Intl.NumberFormat(localeOf(language)).formatToParts(1.5).find((each) => each.type === 'decimal');
  return part?.value === ',' ? ',' : '.';
}

function formatPlain(value: number, language: string, decimals: number): string {
  return new Intl.NumberFormat(localeOf(language), {
    useGrouping: false,
    maximumFractionDigits: decimals,
  }).format(value);
}
