import { useLocation } from '@tanstack/react-router';
import { useState } from 'react';
import { useFormat } from '../format/format-provider.tsx';
import { useText } from '../texts/text-provider.tsx';
import { useKeptSince } from './kept-since.ts';
import styles from './offline.module.css';
import { OutboxSheet } from './outbox-sheet.tsx';
import { useOutbox, useOutboxAtWork } from './use-outbox.ts';

/** One line above every page while something waits on this device, or while what is seen comes from it. */
export function OutboxBar() {
  useOutboxAtWork();
  const text = useText('offline');
  const format = useFormat();
  const { facts: all, inHand, sending, silent, kept } = useOutbox();
  const facts = all.filter((fact) => !inHand.has(fact.eventId));
  const keptSince = useKeptSince();
  const [open, setOpen] = useState(false);
  const count = (state: string) => facts.filter((fact) => fact.state === state).length;
  const said = (['refused', 'to-sign', 'waiting'] as const).flatMap((state) => {
    const number = count(state);
    const key = state === 'waiting' ? 'waits' : state;
    return number > 0 ? [text(key, { count: number, facts: format.count(number) })] : [];
  });
  // The tightening view says it in its own place: nothing may move the bolt plan.
  const tightening = useLocation().pathname.endsWith('/tighten');
  const shown = !tightening && (said.length > 0 || keptSince !== null || !kept);
  return (
    <div role="status" className={styles.place}>
      {shown && (
        <div className={styles.bar} data-tone={count('refused') > 0 ? 'stop' : 'attention'}>
          <span>
            {[
              silent || keptSince !== null ? text('no-signal') : '',
              sending ? text('sending') : '',
              ...said,
              keptSince === null ? '' : text('no-signal-since', { when: format.dayTime(keptSince) }),
              kept ? '' : text('not-kept'),
            ]
              .filter(Boolean)
              .join(' · ')}
          </span>
          {facts.length > 0 && (
            <button type="button" className={styles.show} onClick={() => setOpen(true)}>
              {text('show-list')}
            </button>
          )}
        </div>
      )}
      {facts.length > 0 && <OutboxSheet open={open} onOpenChange={setOpen} />}
    </div>
  );
}
