import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useMay, useMe } from '../../app/session.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { OpenShutdown } from './open-shutdown.tsx';
import styles from './session.module.css';

/** Choose a shutdown, or open one. */
export function ShutdownsPage() {
  const text = useText('session');
  const format = useFormat();
  const { site, shutdowns } = useMe();
  const mayOpen = useMay()('open-shutdown');
  const [opening, setOpening] = useState(false);
  const button = (
    <Button kind="primary" onClick={() => setOpening(true)} disabledReason={mayOpen ? undefined : text('open-who')}>
      {text('open-shutdown')}
    </Button>
  );
  return (
    <>
      <PageHeader
        title={shutdowns.length === 0 ? text('no-shutdown') : text('which-shutdown')}
        sub={site.name}
        actions={shutdowns.length > 0 && !opening ? button : undefined}
      />
      {opening && <OpenShutdown onCancel={() => setOpening(false)} />}
      {!opening && shutdowns.length === 0 && (
        <EmptyState title={text('shutdown-first')} actions={button}>
          <p>{text('shutdown-holds')}</p>
        </EmptyState>
      )}
      {!opening && (
        <ul className={styles.list}>
          {shutdowns.map((shutdown) => (
            <li key={shutdown.shutdownId}>
              <Link href={addresses.today(shutdown.shutdownId)} className={styles.entry}>
                <span className={styles.entryName}>{shutdown.name}</span>
                <span>
                  {text('from-to', {
                    from: format.calendarDay(shutdown.startsOn),
                    to: format.calendarDay(shutdown.endsOn),
                  })}
                </span>
              </Link>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
