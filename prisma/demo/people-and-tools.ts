import type { Payload, QualifiedFor, Reach, Role } from '@seatwell/contract';
import { setUpSite } from '../../apps/server/src/features/session/set-up-site.ts';
import { hashSecret } from '../../apps/server/src/platform/sign-in/secrets.ts';
import { CREW_NAMES, CREWS, OFFICE, SITE } from './plant.ts';
import type { DemoActor, Recorder } from './recorder.ts';

/** The secret of every demo account: printed at the start, and for a demo only. */
export const DEMO_SECRET = 'northmere-demo-2026';

export interface DemoAccount {
  readonly role: string;
  readonly name: string;
  readonly email: string;
  readonly password: string;
}

export interface Crew {
  readonly crewId: string;
  readonly code: string;
  readonly company: string;
  readonly shift: 'day' | 'night';
  readonly personIds: readonly string[];
  readonly chargehand: DemoActor;
  /** the one who records with the crew's phone */
  readonly technician: DemoActor;
}

export interface Cast {
  readonly siteId: string;
  readonly by: Readonly<Record<Exclude<Role, 'technician' | 'chargehand'>, DemoActor>>;
  readonly crews: readonly Crew[];
  readonly accounts: readonly DemoAccount[];
}

const addressOf = (name: string): string =>
  `${name
    .normalize('NFD')
    .replaceAll(/[^A-Za-z ]/g, '')
    .toLowerCase()
    .replaceAll(' ', '.')}@northmere.example`;

async function engage(
  story: Recorder,
  administrator: DemoActor,
  person: { name: string; company: string; trade: string | null; badge: string },
): Promise<string> {
  const personId = story.id();
  await story.site(administrator, 'person-registered', personId, { personId, ...person });
  return personId;
}

async function openAccount(
  story: Recorder,
  administrator: DemoActor,
  personId: string,
  name: string,
  role: Role,
  secretHash: string,
  reach: Reach = { kind: 'site' },
): Promise<DemoActor> {
  const accountId = story.id();
  const grantId = story.id();
  await story.site(administrator, 'account-opened', accountId, { accountId, personId, email: addressOf(name) });
  await story.site(administrator, 'role-granted', grantId, { grantId, accountId, role, reach, endsOn: null });
  await story.db.query('UPDATE account SET secret_hash = $2 WHERE account_id = $1', [accountId, secretHash]);
  return story.actor(administrator.actor.siteId, accountId, DEMO_SECRET);
}

const CREW_SKILLS: readonly QualifiedFor[] = ['disassembly', 'assembly', 'face-inspection', 'torque-wrench', 'testing'];

/** The site, its administrator, the office, six crews of six, and what they are qualified for. */
export async function engagePeople(story: Recorder): Promise<Cast> {
  const administratorName = 'Astrid Ness';
  const { siteId, accountId } = await setUpSite(
    story.db,
    {
      siteName: SITE.name,
      timeZone: SITE.timeZone,
      units: 'SI',
      administrator: {
        name: administratorName,
        company: SITE.name,
        email: addressOf(administratorName),
        password: DEMO_SECRET,
      },
    },
    story.now,
  );
  const administrator = await story.actor(siteId, accountId, DEMO_SECRET);
  const secretHash = await hashSecret(DEMO_SECRET);
  const accounts: DemoAccount[] = [];
  const note = (role: string, name: string) =>
    accounts.push({ role, name, email: addressOf(name), password: DEMO_SECRET });
  const office: Partial<Record<Role, DemoActor>> = { administrator };
  note('administrator', administratorName);
  let badge = 1000;
  const nextBadge = () => {
    badge += 7;
    return String(badge);
  };
  for (const { role, name, company } of OFFICE) {
    const personId = await engage(story, administrator, { name, company, trade: null, badge: nextBadge() });
    office[role] = await openAccount(story, administrator, personId, name, role, secretHash);
    note(role, name);
  }
  const by = office as Cast['by'];
  await qualify(story, by.inspector, by.inspector.actor.personId, ['face-inspection', 'testing'], 400);
  const crews: Crew[] = [];
  for (const crew of CREWS) {
    const names = CREW_NAMES[crew.code] ?? [];
    const personIds: string[] = [];
    for (const [index, name] of names.entries()) {
      const trade = index === 0 ? 'chargehand' : 'bolting technician';
      const personId = await engage(story, administrator, { name, company: crew.company, trade, badge: nextBadge() });
      personIds.push(personId);
      // One in each crew has a certificate that lapses within days: the screens have something to warn of.
      const days = index === 4 ? story.random.whole(13, 17) : story.random.whole(200, 700);
      const skills: QualifiedFor[] = index !== 4 ? [...CREW_SKILLS, 'hydraulic-wrench'] : [...CREW_SKILLS];
      await qualify(story, by.inspector, personId, skills, days);
    }
    const [first, second] = personIds;
    const [firstName, secondName] = names;
    if (!first || !second || !firstName || !secondName) throw new Error(`Crew ${crew.code} has too few people.`);
    const chargehand = await openAccount(story, administrator, first, firstName, 'chargehand', secretHash);
    const technician = await openAccount(story, administrator, second, secondName, 'technician', secretHash);
    note('chargehand', firstName);
    note('technician', secondName);
    crews.push({ ...crew, crewId: story.id(), personIds, chargehand, technician });
  }
  return { siteId, by, crews, accounts };
}

async function qualify(
  story: Recorder,
  inspector: DemoActor,
  personId: string,
  qualifiedFor: QualifiedFor[],
  daysValid: number,
): Promise<void> {
  const qualificationId = story.id();
  const day = (offset: number) => new Date(story.now.getTime() + offset * 86_400_000).toISOString().slice(0, 10);
  await story.site(inspector, 'qualification-recorded', qualificationId, {
    qualificationId,
    personId,
    qualifiedFor,
    validFrom: day(-300),
    validThrough: day(daysValid),
    scheme: 'Bolting technician, site scheme (demo)',
    certificate: null,
  });
}

export interface Toolbox {
  readonly wrenches: readonly { readonly toolId: string; readonly scale_Nm: number }[];
  readonly hydraulics: readonly { readonly toolId: string; readonly least_Nm: number; readonly most_Nm: number }[];
  readonly pumpId: string;
  readonly gaugeId: string;
  readonly testGaugeId: string;
}

const WRENCH_SCALES_NM = [60, 90, 135, 200, 300, 450, 680, 1000, 1500];

/** Wrenches of every range, a hydraulic set with its pressure-torque pairs, a test gauge, and their certificates. */
export async function registerTools(story: Recorder, inspector: DemoActor): Promise<Toolbox> {
  const day = (offset: number) => new Date(story.now.getTime() + offset * 86_400_000).toISOString().slice(0, 10);
  const register = async (
    tag: string,
    kind: Payload<'tool-registered'>['kind'],
    scale: Pick<Payload<'tool-registered'>, 'scaleMinimum' | 'scaleMaximum' | 'scaleUnit' | 'scaleDivision'>,
    daysValid: number,
    pairs: Payload<'calibration-recorded'>['pairs'] = [],
  ): Promise<string> => {
    const toolId = story.id();
    await story.site(inspector, 'tool-registered', toolId, { toolId, tag, kind, maker: null, ...scale });
    await story.site(inspector, 'calibration-recorded', toolId, {
      calibrationId: story.id(),
      toolId,
      calibratedOn: day(-120),
      validThrough: day(daysValid),
      certificate: null,
      certificateNumber: `NC-${tag}`,
      provisional: false,
      pairs,
    });
    return toolId;
  };
  const wrenches: { toolId: string; scale_Nm: number }[] = [];
  for (const [index, scale_Nm] of WRENCH_SCALES_NM.entries()) {
    const scale = { scaleMinimum: null, scaleMaximum: scale_Nm, scaleUnit: 'N·m' as const, scaleDivision: 1 };
    // One of them lapses within days of the demo's present.
    const toolId = await register(
      `TW-${scale_Nm}`,
      'torque-wrench',
      scale,
      index === 4 ? 14 : story.random.whole(60, 240),
    );
    wrenches.push({ toolId, scale_Nm });
  }
  const bar = (value: number) => value / 10;
  const hydraulic = async (tag: string, least_Nm: number, most_Nm: number) => {
    const toolId = await register(
      tag,
      'hydraulic-wrench',
      { scaleMinimum: least_Nm, scaleMaximum: most_Nm, scaleUnit: 'N·m', scaleDivision: null },
      150,
      [70, 140, 210, 280, 350, 420, 490, 560, 630, 700].map((pressure) => ({
        pressure_MPa: bar(pressure),
        torque_Nm: Math.round((pressure / 700) * most_Nm),
      })),
    );
    return { toolId, least_Nm, most_Nm };
  };
  const hydraulics = [await hydraulic('HW-041', 40, 700), await hydraulic('HW-112', 150, 3000)];
  const pressure = { scaleMinimum: null, scaleUnit: 'MPa' as const };
  return {
    wrenches,
    hydraulics,
    pumpId: await register('HP-07', 'pump', { ...pressure, scaleMaximum: 70, scaleDivision: null }, 150),
    gaugeId: await register('PG-31', 'pressure-gauge', { ...pressure, scaleMaximum: 100, scaleDivision: 1 }, 150),
    testGaugeId: await register('TG-04', 'test-gauge', { ...pressure, scaleMaximum: 10, scaleDivision: 0.05 }, 150),
  };
}
