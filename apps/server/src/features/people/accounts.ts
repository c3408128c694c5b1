import type { AccountsAnswer } from '@seatwell/contract';
import { dayOf } from '@seatwell/workflow';
import { actionsOf } from '../reading/actions.ts';
import { byText } from '../reading/by-text.ts';
import { maybeDay, maybeInstant } from '../reading/days.ts';
import { namesOf } from '../reading/names.ts';
import type { SiteReading } from '../reading/reading.ts';
import { siteZone } from '../reading/site-zone.ts';

type GrantRow = AccountsAnswer['rows'][number]['grants'][number];

/** `GET /accounts`: who may sign in, and in which roles. Secrets are never read. */
export async function accounts({ prisma, db, siteId, actor, now }: SiteReading): Promise<AccountsAnswer> {
  const [rows, grants, zone] = await Promise.all([
    prisma.account.findMany({
      where: { siteId },
      select: { accountId: true, personId: true, email: true, closedAt: true, lockedUntil: true },
    }),
    prisma.roleGrant.findMany({ where: { siteId }, orderBy: [{ endedAt: 'desc' }, { grantId: 'asc' }] }),
    siteZone(db, siteId),
  ]);
  const today = dayOf(now, zone);
  const names = await namesOf(
    db,
    siteId,
    rows.map((row) => row.personId),
  );
  const grantsOf = new Map<string, GrantRow[]>();
  for (const grant of grants) {
    const [startsOn, endsOn] = [maybeDay(grant.startsOn), maybeDay(grant.endsOn)];
    const inForce =
      grant.endedAt === null && (startsOn === null || startsOn <= today) && (endsOn === null || endsOn >= today);
    const row: GrantRow = {
      grantId: grant.grantId,
      role: grant.role as GrantRow['role'],
      reach: grant.reach as GrantRow['reach'],
      startsOn,
      endsOn,
      endedAt: maybeInstant(grant.endedAt),
      inForce,
    };
    grantsOf.set(grant.accountId, [...(grantsOf.get(grant.accountId) ?? []), row]);
  }
  return {
    rows: rows.sort(byText((row) => row.email)).map(({ accountId, personId, email, closedAt, lockedUntil }) => ({
      accountId,
      person: names.of(personId),
      email,
      closedAt: maybeInstant(closedAt),
      lockedUntil: maybeInstant(lockedUntil),
      grants: grantsOf.get(accountId) ?? [],
    })),
    actions: actionsOf(actor, ['account-opened', 'account-closed', 'role-granted', 'role-ended', 'deputy-named'], {}),
  };
}
