import type { ChoicesAnswer } from '@seatwell/contract';
import { useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/dialog.tsx';
import { useAnnouncer } from '../../ui/toast.tsx';
import { phoneQuery, useMediaQuery } from '../../ui/use-media-query.ts';
import { FindField } from './find-field.tsx';
import styles from './register.module.css';
import { filtersOf, isFiltered, type RegisterSearch, withFilter } from './register-search.ts';
import { RegisterSentence } from './register-sentence.tsx';

interface Props {
  readonly search: RegisterSearch;
  readonly onChange: (search: RegisterSearch) => void;
  readonly choices: ChoicesAnswer;
  readonly timeZone: string;
}

/** The sentence that narrows the register down; on a phone it stands behind a button, so that joints come first. */
export function RegisterFilters(props: Props) {
  const text = useText('register');
  const format = useFormat();
  const phone = useMediaQuery(phoneQuery);
  const [open, setOpen] = useState(false);
  const { search, onChange } = props;
  const count = Object.keys(filtersOf(search)).filter((name) => name !== 'search').length;
  return (
    <div className={styles.filters}>
      {!phone && <RegisterSentence {...props} />}
      <div className={styles.beside}>
        <FindField
          value={search.search ?? ''}
          onChange={(typed) => onChange(withFilter(search, 'search', typed === '' ? undefined : typed))}
        />
        {phone && (
          <Button onClick={() => setOpen(true)}>
            {count === 0 ? text('filter') : text('filter-count', { count: format.count(count) })}
          </Button>
        )}
        {isFiltered(search) && <KeepList />}
      </div>
      {phone && (
        <Sheet open={open} onOpenChange={setOpen} title={text('filter')}>
          <RegisterSentence {...props} />
        </Sheet>
      )}
    </div>
  );
}

function KeepList() {
  const text = useText('register');
  const { toast } = useAnnouncer();
  // The clipboard is there on secure pages only; the address holds the list in any case.
  const keep = () => {
    const copied = navigator.clipboard?.writeText(location.href) ?? Promise.reject(new Error('no clipboard'));
    copied.then(
      () => toast({ message: text('keep-list-done') }),
      () => toast({ message: text('keep-list-failed') }),
    );
  };
  return (
    <Button kind="quiet" onClick={keep}>
      {text('keep-list')}
    </Button>
  );
}
