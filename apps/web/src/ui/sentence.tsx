import { Popover } from 'radix-ui';
import { type ReactNode, useId, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { Button } from './button.tsx';
import { narrowed } from './combobox.tsx';
import type { Option } from './select.tsx';
import styles from './sentence.module.css';
import { TextField } from './text-field.tsx';

/** A filter as a sentence that can be edited: words with SentenceChoice parts between them. */
export function Sentence({ children, label }: { children: ReactNode; label: string }) {
  return (
    <search aria-label={label}>
      <p className={styles.sentence}>{children}</p>
    </search>
  );
}

export interface SentenceChoiceProps {
  /** what is chosen here, for example "area" */
  readonly label: string;
  /** what stands in the sentence */
  readonly shown: string;
  readonly options: readonly Option[];
  readonly value: readonly string[];
  readonly onChange: (value: readonly string[]) => void;
  /** several may be ticked; otherwise choosing one closes */
  readonly multiple?: boolean;
}

/** The part of the sentence that can be changed: a word that opens its choices. */
export function SentenceChoice(props: SentenceChoiceProps) {
  const { label, shown, options, value, onChange, multiple = false } = props;
  const text = useText('ui');
  const name = useId();
  const [open, setOpen] = useState(false);
  const [query, setQuery] = useState('');
  const listed = query === '' ? options : narrowed(options, query);

  const change = (option: Option, on: boolean) => {
    if (multiple) {
      onChange(on ? [...value, option.value] : value.filter((each) => each !== option.value));
    } else {
      onChange([option.value]);
    }
  };

  return (
    <Popover.Root
      open={open}
      onOpenChange={(next) => {
        setOpen(next);
        setQuery('');
      }}
    >
      <Popover.Trigger className={styles.part} aria-label={`${label}: ${shown}`}>
        {shown}
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          className={styles.popover}
          align="start"
          sideOffset={6}
          collisionPadding={12}
          aria-label={label}
        >
          {options.length > 8 ? (
            <TextField label={text('search')} type="search" value={query} onChange={setQuery} />
          ) : (
            <strong>{label}</strong>
          )}
          <fieldset className={styles.options} aria-label={label}>
            {listed.map((option) => (
              <label key={option.value} className={styles.option}>
                <input
                  type={multiple ? 'checkbox' : 'radio'}
                  name={name}
                  checked={value.includes(option.value)}
                  onChange={(event) => change(option, event.target.checked)}
                  // A click decides; arrow keys only move, so that the list stays open for them.
                  onClick={(event) => {
                    if (!multiple && event.detail > 0) setOpen(false);
                  }}
                  onKeyDown={(event) => {
                    if (event.key === 'Enter') setOpen(false);
                  }}
                />
                <span className={styles.words}>
                  {option.label}
                  {option.detail !== undefined && <span className={styles.detail}>{option.detail}</span>}
                </span>
              </label>
            ))}
            {listed.length === 0 && <p className={styles.detail}>{text('no-match', { query })}</p>}
          </fieldset>
          {multiple && value.length > 0 && (
            <Button kind="quiet" onClick={() => onChange([])}>
              {text('clear')}
            </Button>
          )}
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
