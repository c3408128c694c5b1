import { useLocation } from '@tanstack/react-router';
import { Link } from '../ui/link.tsx';
import styles from './page-ways.module.css';

/** Pages that belong together, side by side above the title. */
export function PageWays({ label, ways }: { label: string; ways: readonly { href: string; label: string }[] }) {
  const { pathname } = useLocation();
  return (
    <nav className={styles.ways} aria-label={label}>
      {ways.map((way) => (
        <Link
          key={way.href}
          href={way.href}
          className={styles.way}
          aria-current={way.href.split('?')[0] === pathname ? 'page' : undefined}
        >
          {way.label}
        </Link>
      ))}
    </nav>
  );
}
