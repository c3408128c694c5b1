import type { TextKey } from '../texts/translate.ts';
import { addresses } from './addresses.ts';

export interface NavigationEntry {
  readonly key: TextKey<'app'>;
  /** a shorter word for the phone's bar */
  readonly shortKey?: TextKey<'app'>;
  /** undefined while no shutdown is chosen */
  readonly href: (shutdownId: string | undefined) => string | undefined;
  /** the entry is current when the address begins so (`:id` stands for the shutdown) */
  readonly under: readonly string[];
}

const inShutdown =
  (address: (shutdownId: string) => string) =>
  (shutdownId: string | undefined): string | undefined =>
    shutdownId === undefined ? undefined : address(shutdownId);

/** The navigation in trade words. */
export const navigation: readonly NavigationEntry[] = [
  {
    key: 'nav-today',
    href: inShutdown(addresses.today),
    under: ['/shutdowns/:id/today', '/shutdowns/:id/reviews'],
  },
  {
    key: 'nav-register',
    href: inShutdown(addresses.register),
    under: ['/shutdowns/:id/register', '/shutdowns/:id/joints', '/shutdowns/:id/import', '/shutdowns/:id/found-joints'],
  },
  { key: 'nav-areas', href: inShutdown(addresses.areas), under: ['/shutdowns/:id/areas'] },
  {
    key: 'nav-packs',
    href: inShutdown(addresses.packs),
    under: ['/shutdowns/:id/packs', '/shutdowns/:id/systems', '/shutdowns/:id/punch-items', '/shutdowns/:id/permits'],
  },
  { key: 'nav-blinds', href: inShutdown(addresses.blinds), under: ['/shutdowns/:id/blinds', '/shutdowns/:id/items'] },
  {
    key: 'nav-my-joints',
    href: inShutdown(addresses.myJoints),
    under: [
      '/shutdowns/:id/my-joints',
      '/shutdowns/:id/joints/:joint/work',
      '/shutdowns/:id/joints/:joint/tighten',
      '/shutdowns/:id/sign',
      '/shutdowns/:id/found',
      '/shutdowns/:id/talk',
    ],
  },
  { key: 'nav-procedures', href: () => addresses.procedures(), under: ['/site/procedures', '/site/data'] },
  {
    key: 'nav-people',
    href: () => addresses.people(),
    under: ['/site/people', '/site/accounts', '/shutdowns/:id/talks'],
  },
  { key: 'nav-tools', href: () => addresses.tools(), under: ['/site/tools'] },
  { key: 'nav-report', href: inShutdown(addresses.report), under: ['/shutdowns/:id/report'] },
  { key: 'nav-calculate', href: () => addresses.calculate(), under: ['/calculate'] },
];

/** The four entries of the phone's bar: what the person's work begins with. */
export function phoneKeys(roles: readonly string[]): readonly string[] {
  const works = roles.some((role) => role === 'technician' || role === 'chargehand');
  if (works) return ['nav-my-joints', 'nav-today', 'nav-register', 'nav-packs'];
  return ['nav-today', 'nav-register', 'nav-areas', 'nav-packs'];
}

/** Where somebody begins: technicians and chargehands with their joints, the others with the day. */
export function startAddress(roles: readonly string[], shutdownId: string): string {
  return roles.some((role) => role !== 'technician' && role !== 'chargehand')
    ? addresses.today(shutdownId)
    : addresses.myJoints(shutdownId);
}

/** Whether an address belongs to an entry. */
export function isCurrent(entry: NavigationEntry, pathname: string): boolean {
  const plain = pathname
    .replace(/^\/shutdowns\/[^/]+/, '/shutdowns/:id')
    .replace(/\/joints\/[^/]+(?=\/(work|tighten)(\/|$))/, '/joints/:joint');
  return navigationOf(plain) === entry;
}

/** The entry whose beginning fits most of the address: work on a joint is under the joint's, and more. */
function navigationOf(plain: string): NavigationEntry | undefined {
  const fits = (start: string) => plain === start || plain.startsWith(`${start}/`);
  const longest = (entry: NavigationEntry) => Math.max(0, ...entry.under.filter(fits).map((start) => start.length));
  return navigation
    .filter((entry) => longest(entry) > 0)
    .reduce<NavigationEntry | undefined>(
      (best, entry) => (best && longest(best) >= longest(entry) ? best : entry),
      undefined,
    );
}
