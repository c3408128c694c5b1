import { lazy, Suspense, useEffect, useState } from 'react';
import { askedBy, goToSearch } from '../features/keys/single-keys.ts';
import { useText } from '../texts/text-provider.tsx';
import { Sheet } from '../ui/dialog.tsx';
import { Skeleton } from '../ui/skeleton.tsx';
import styles from './shell.module.css';

const KeysList = lazy(() => import('../features/keys/keys-list.tsx').then(({ KeysList }) => ({ default: KeysList })));

/** Listens for the single keys: `?` shows the keys of the page, `/` goes to its search field. */
export function useKeysHelp(): { readonly open: boolean; readonly setOpen: (open: boolean) => void } {
  const [open, setOpen] = useState(false);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const asked = askedBy(event);
      if (asked === 'help') setOpen(true);
      else if (asked !== 'find' || !goToSearch()) return;
      event.preventDefault();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
  return { open, setOpen };
}

/** The keys of the page beside it. */
export function KeysSheet({ open, onOpenChange }: { open: boolean; onOpenChange: (open: boolean) => void }) {
  const text = useText('app');
  return (
    <Sheet open={open} onOpenChange={onOpenChange} title={text('keys')} description={text('keys-detail')}>
      <Suspense fallback={<Skeleton />}>
        <KeysList />
      </Suspense>
    </Sheet>
  );
}

/** The visible way to the same sheet. */
export function KeysButton({ onPress }: { onPress: () => void }) {
  const text = useText('app');
  return (
    <button type="button" className={styles.keys} aria-haspopup="dialog" aria-keyshortcuts="?" onClick={onPress}>
      {text('keys')}
      <span aria-hidden="true" className={styles.key}>
        ?
      </span>
    </button>
  );
}
