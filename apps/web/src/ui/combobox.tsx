import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import styles from './combobox.module.css';
import fieldStyles from './field.module.css';
import { ControlBox, Field, type FieldProps } from './field.tsx';
import type { Option } from './select.tsx';
import { VisuallyHidden } from './visually-hidden.tsx';

export interface ComboboxProps extends FieldProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** what can be chosen; with `onSearch` the caller narrows it down, without it is filtered here */
  readonly options: readonly Option[];
  readonly onSearch?: (query: string) => void;
  /** label of the value where the options of the moment do not hold it */
  readonly valueLabel?: string;
}

// The list is there to be narrowed by typing: nobody scrolls past so many.
const mostShown = 60;

/** A choice from a long list, found by typing. */
export function Combobox({ value, onChange, options, onSearch, valueLabel, ...field }: ComboboxProps) {
  const text = useText('ui');
  const listId = useId();
  const [query, setQuery] = useState<string | null>(null);
  const [active, setActive] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  const chosen = options.find((option) => option.value === value);
  const open = query !== null;
  const shown = (open && !onSearch ? narrowed(options, query) : options).slice(0, mostShown);

  const search = (next: string) => {
    setQuery(next);
    setActive(0);
    onSearch?.(next);
  };
  const choose = (option: Option | undefined) => {
    if (option === undefined || option.disabledReason !== undefined) return;
    onChange(option.value);
    setQuery(null);
  };
  const move = (next: number) => {
    setActive(next);
    list.current?.children[next]?.scrollIntoView({ block: 'nearest' });
  };
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && open) {
      setQuery(null);
    } else if (event.key === 'Enter' && open) {
      choose(shown[active]);
    } else if (event.key === 'ArrowDown') {
      if (open) move(Math.min(active + 1, shown.length - 1));
      else search('');
    } else if (event.key === 'ArrowUp' && open) {
      move(Math.max(active - 1, 0));
    } else {
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <Field {...field}>
      {(control) => (
        <div className={styles.anchor}>
          <ControlBox invalid={Boolean(field.error)} disabled={field.disabled}>
            <input
              {...control}
              className={fieldStyles.input}
              role="combobox"
              aria-expanded={open}
              aria-controls={listId}
              aria-autocomplete="list"
              aria-activedescendant={open && shown[active] ? `${listId}-${active}` : undefined}
              autoComplete="off"
              placeholder={text('search')}
              value={query ?? chosen?.label ?? valueLabel ?? ''}
              onChange={(event) => search(event.target.value)}
              onClick={() => open || search('')}
              onBlur={() => setQuery(null)}
              onKeyDown={press}
            />
          </ControlBox>
          {open && (
            <div ref={list} id={listId} className={styles.list} role="listbox" aria-label={field.label}>
              {shown.map((option, index) => (
                <ComboboxOption
                  key={option.value}
                  id={`${listId}-${index}`}
                  option={option}
                  active={index === active}
                  selected={option.value === value}
                  onChoose={() => choose(option)}
                />
              ))}
              {shown.length === 0 && (
                <div className={styles.none} role="presentation">
                  {text('no-match', { query })}
                </div>
              )}
            </div>
          )}
          <div role="status">
            <VisuallyHidden>{open ? text('matches', { count: shown.length }) : ''}</VisuallyHidden>
          </div>
        </div>
      )}
    </Field>
  );
}

interface ComboboxOptionProps {
  readonly id: string;
  readonly option: Option;
  readonly active: boolean;
  readonly selected: boolean;
  readonly onChoose: () => void;
}

function ComboboxOption({ id, option, active, selected, onChoose }: ComboboxOptionProps) {
  const more = option.disabledReason ?? option.detail;
  return (
    // biome-ignore lint/a11y/useFocusableInteractive: focus stays in the input, which names the active option
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are handled by the input
    <div
      id={id}
      className={styles.option}
      role="option"
      aria-selected={selected}
      aria-disabled={option.disabledReason !== undefined || undefined}
      data-active={active ? '' : undefined}
      // The input would lose the focus, and the list close, before the click arrives.
      onPointerDown={(event) => event.preventDefault()}
      onClick={onChoose}
    >
      {option.label}
      {more !== undefined && <span className={styles.detail}>{more}</span>}
    </div>
  );
}

/** Options that hold every word of the query, in label or detail. */
export function narrowed(options: readonly Option[], query: string): readonly Option[] {
  const words = plain(query).split(/\s+/).filter(Boolean);
  return options.filter((option) => {
    const hay = plain(`${option.label} ${option.detail ?? ''}`);
    return words.every((word) => hay.includes(word));
  });
}

function plain(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}
