import { type ReactNode, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { Sheet } from './dialog.tsx';
import { Link } from './link.tsx';
import styles from './nav-frame.module.css';

export interface NavItem {
  readonly key: string;
  readonly label: string;
  /** shorter word for the phone's bar */
  readonly shortLabel?: string;
  readonly href: string;
  readonly current: boolean;
  /** formatted number beside the label, loud only where it must be */
  readonly count?: {
    readonly value: string;
    readonly tone?: 'plain' | 'attention' | 'stop';
  };
}

export interface NavFrameProps {
  readonly name: string;
  readonly where: ReactNode;
  readonly items: readonly NavItem[];
  /** keys of up to four items for the phone's bar, in order; the rest stand behind "More" */
  readonly phoneKeys: readonly string[];
  readonly foot: ReactNode;
  readonly children: ReactNode;
}

/** The frame of every page: one navigation column at the desk, a bar at the thumb on a phone. */
export function NavFrame({ name, where, items, phoneKeys, foot, children }: NavFrameProps) {
  const text = useText('ui');
  return (
    <div className={styles.frame}>
      <a className={styles.skip} href="#page">
        {text('skip-to-content')}
      </a>
      <nav className={styles.column} aria-label={text('main-navigation')}>
        <span className={styles.name}>{name}</span>
        <span className={styles.where}>{where}</span>
        <NavLinks items={items} />
        <div className={styles.foot}>{foot}</div>
      </nav>
      <main id="page" className={styles.main} tabIndex={-1}>
        {children}
      </main>
      <BottomBar items={items} phoneKeys={phoneKeys} foot={foot} />
    </div>
  );
}

function NavLinks({ items, onFollow }: { items: readonly NavItem[]; onFollow?: () => void }) {
  return (
    <ul className={styles.links}>
      {items.map((item) => (
        <li key={item.key}>
          <Link
            href={item.href}
            className={styles.link}
            aria-current={item.current ? 'page' : undefined}
            {...(onFollow ? { onClick: onFollow } : {})}
          >
            {item.label}
            {item.count && (
              <span className={styles.count} data-tone={item.count.tone}>
                {item.count.value}
              </span>
            )}
          </Link>
        </li>
      ))}
    </ul>
  );
}

function BottomBar({ items, phoneKeys, foot }: Pick<NavFrameProps, 'items' | 'phoneKeys' | 'foot'>) {
  const text = useText('ui');
  const [open, setOpen] = useState(false);
  const first = phoneKeys.slice(0, 4).flatMap((key) => items.filter((item) => item.key === key));
  const rest = items.filter((item) => !first.includes(item));
  return (
    <nav className={styles.bottom} aria-label={text('main-navigation')}>
      {first.map((item) => (
        <Link key={item.key} href={item.href} className={styles.tab} aria-current={item.current ? 'page' : undefined}>
          {item.shortLabel ?? item.label}
          {item.count && (
            <span className={styles.count} data-tone={item.count.tone}>
              {item.count.value}
            </span>
          )}
        </Link>
      ))}
      <button
        type="button"
        className={styles.tab}
        aria-expanded={open}
        aria-current={rest.some((item) => item.current) ? 'page' : undefined}
        onClick={() => setOpen(true)}
      >
        {text('more')}
      </button>
      <Sheet open={open} onOpenChange={setOpen} title={text('more')}>
        <NavLinks items={rest} onFollow={() => setOpen(false)} />
        <div className={styles.foot}>{foot}</div>
      </Sheet>
    </nav>
  );
}
