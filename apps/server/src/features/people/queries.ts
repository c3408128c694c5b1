import type { PeopleAnswer, PersonPage, PersonRow, QualificationRow } from '@seatwell/contract';
import { dayOf } from '@seatwell/workflow';
import type { Qualification } from '../../platform/database/generated/client.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { actionsOf } from '../reading/actions.ts';
import { byText } from '../reading/by-text.ts';
import { daysAfter, dayText, LAPSING_DAYS, maybeInstant } from '../reading/days.ts';
import type { SiteReading } from '../reading/reading.ts';
import { siteZone } from '../reading/site-zone.ts';

function stateOf(row: Qualification, today: string): QualificationRow['state'] {
  const [from, through] = [dayText(row.validFrom), dayText(row.validThrough)];
  if (row.withdrawnAt) return 'withdrawn';
  if (through < today) return 'lapsed';
  if (from > today) return 'not-yet';
  return through <= daysAfter(today, LAPSING_DAYS) ? 'lapsing' : 'in-date';
}

const qualificationRow = (row: Qualification, today: string): QualificationRow => ({
  qualificationId: row.qualificationId,
  qualifiedFor: row.qualifiedFor as QualificationRow['qualifiedFor'],
  validFrom: dayText(row.validFrom),
  validThrough: dayText(row.validThrough),
  scheme: row.scheme,
  certificate: row.certificate,
  withdrawnAt: maybeInstant(row.withdrawnAt),
  state: stateOf(row, today),
});

const grouped = <T>(rows: readonly T[], key: (row: T) => string): Map<string, T[]> => {
  const groups = new Map<string, T[]>();
  for (const row of rows) groups.set(key(row), [...(groups.get(key(row)) ?? []), row]);
  return groups;
};

async function personRows({ prisma, siteId, now, db }: SiteReading, personId: string | null): Promise<PersonRow[]> {
  const one = personId ? { siteId, personId } : { siteId };
  const [persons, qualifications, crews, shutdowns, accounts, zone] = await Promise.all([
    prisma.person.findMany({ where: one }),
    prisma.qualification.findMany({ where: one, orderBy: [{ validThrough: 'desc' }, { qualificationId: 'asc' }] }),
    prisma.crew.findMany({ where: personId ? { siteId, personIds: { has: personId } } : { siteId } }),
    prisma.shutdown.findMany({ where: { siteId }, select: { shutdownId: true, name: true } }),
    prisma.account.findMany({ where: { ...one, closedAt: null }, select: { personId: true } }),
    siteZone(db, siteId),
  ]);
  const today = dayOf(now, zone);
  const qualificationsOf = grouped(qualifications, (row) => row.personId);
  const shutdownNames = new Map(shutdowns.map((row) => [row.shutdownId, row.name]));
  const crewsOf = new Map<string, PersonRow['crews']>();
  for (const { crewId, code, shutdownId, personIds } of crews) {
    const crew = { crewId, code, shutdownId, shutdown: shutdownNames.get(shutdownId) ?? '' };
    for (const id of personIds) crewsOf.set(id, [...(crewsOf.get(id) ?? []), crew]);
  }
  const withAccount = new Set(accounts.map((row) => row.personId));
  return persons
    .sort(
      byText(
        (row) => row.name,
        (row) => row.personId,
      ),
    )
    .map((person) => ({
      personId: person.personId,
      name: person.name,
      company: person.company,
      badge: person.badge,
      trade: person.trade,
      erasedAt: maybeInstant(person.erasedAt),
      qualifications: (qualificationsOf.get(person.personId) ?? []).map((row) => qualificationRow(row, today)),
      crews: crewsOf.get(person.personId) ?? [],
      hasAccount: withAccount.has(person.personId),
    }));
}

/** `GET /people` */
export async function people(reading: SiteReading): Promise<PeopleAnswer> {
  return {
    rows: await personRows(reading, null),
    actions: actionsOf(reading.actor, ['person-registered', 'qualification-recorded'], {}),
  };
}

/** `GET /people/:personId` @throws Problem `not-found` */
export async function person(reading: SiteReading, personId: string): Promise<PersonPage> {
  const { prisma, siteId, actor } = reading;
  const [row] = await personRows(reading, personId);
  if (!row) throw new Problem('not-found', `This site has no person ${personId}.`);
  const talks = await prisma.talk.findMany({
    where: { siteId, attendees: { has: personId } },
    orderBy: { heldAt: 'desc' },
  });
  const revisions = await prisma.procedureRevision.findMany({
    where: { siteId, procedureId: { in: talks.map((talk) => talk.procedureId) } },
    select: { procedureId: true, revision: true, code: true },
  });
  const codes = new Map(revisions.map((each) => [`${each.procedureId} ${each.revision}`, each.code]));
  return {
    ...row,
    talks: talks.map(({ talkId, procedureId, revision, heldAt, shutdownId }) => ({
      talkId,
      code: codes.get(`${procedureId} ${revision}`) ?? '',
      revision,
      heldAt: heldAt.toISOString(),
      shutdownId,
    })),
    actions: actionsOf(
      actor,
      ['qualification-recorded', 'qualification-withdrawn', 'account-opened', 'person-erased'],
      {},
      (type) => {
        if (row.erasedAt) return { code: 'erased', message: 'The person was erased.' };
        if (type === 'account-opened' && row.hasAccount)
          return { code: 'has-account', message: 'The person has an account already.' };
        if (type === 'person-erased' && row.hasAccount)
          return { code: 'has-account', message: 'Close the account first.' };
        return null;
      },
    ),
  };
}
