import { createContext, type ReactNode, useCallback, useContext, useRef, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import styles from './toast.module.css';
import { VisuallyHidden } from './visually-hidden.tsx';

export interface ToastMessage {
  readonly message: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

interface Announcer {
  /** shows a short message at the foot and reads it out; for what has happened, never for what is wrong */
  readonly toast: (message: ToastMessage) => void;
  /** reads a message out without showing it: for what the eye can see anyway */
  readonly announce: (message: string) => void;
}

const AnnouncerContext = createContext<Announcer | null>(null);
// A message with an action stays until it is used or closed: nobody has to race a clock (WCAG 2.2.1).
const shownFor_ms = 6000;

/** Holds the app's one live region and its short messages. */
export function AnnouncerProvider({ children }: { children: ReactNode }) {
  const text = useText('ui');
  const [shown, setShown] = useState<(ToastMessage & { id: number }) | null>(null);
  const [spoken, setSpoken] = useState('');
  const nextId = useRef(1);

  const toast = useCallback((message: ToastMessage) => {
    const id = nextId.current++;
    setShown({ ...message, id });
    if (message.action === undefined) {
      setTimeout(() => setShown((current) => (current?.id === id ? null : current)), shownFor_ms);
    }
  }, []);

  return (
    <AnnouncerContext value={{ toast, announce: setSpoken }}>
      {children}
      <div role="status" aria-live="polite">
        <VisuallyHidden>{spoken}</VisuallyHidden>
      </div>
      <div className={styles.place} role="status" aria-live="polite">
        {shown && (
          <div key={shown.id} className={styles.toast}>
            <span>{shown.message}</span>
            {shown.action && (
              <>
                <button
                  type="button"
                  className={styles.action}
                  onClick={() => {
                    shown.action?.run();
                    setShown(null);
                  }}
                >
                  {shown.action.label}
                </button>
                <button type="button" className={styles.action} onClick={() => setShown(null)}>
                  {text('close')}
                </button>
              </>
            )}
          </div>
        )}
      </div>
    </AnnouncerContext>
  );
}

export function useAnnouncer(): Announcer {
  const announcer = useContext(AnnouncerContext);
  if (!announcer) throw new Error('useAnnouncer needs an AnnouncerProvider above it.');
  return announcer;
}
