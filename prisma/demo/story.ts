import type { Payload } from '@seatwell/contract';
import {
  minutesToClose,
  type Stage,
  scheduleCheck,
  scheduleFacesAndNipUp,
  scheduleOpening,
  scheduleTightening,
} from './crew-work.ts';
import { scheduleIncidents } from './incidents.ts';
import { scheduleItems } from './items.ts';
import { type DemoJoint, type DemoMake, imagineJoints, type Places, packsOf, SMALL_SYSTEMS } from './joints.ts';
import { schedulePacks } from './packs-and-handover.ts';
import type { Crew } from './people-and-tools.ts';
import { AREAS, SITE, SYSTEMS } from './plant.ts';
import { CrewClock, daysAfter, hoursAfter } from './timetable.ts';

const JOINTS = 640;
const DAYS = 24;
const AT_ONCE = 10;

/** Hydraulic wrench from this size of bolting up; makers' torques and the flare's own numbering have their procedures. */
export function procedureOf(joint: DemoJoint): 'BP-01' | 'BP-02' | 'BP-03' | 'BP-04' {
  if (joint.makersTorque_Nm !== null) return 'BP-04';
  const large =
    joint.bolts >= 12 &&
    (joint.family.rating === '600' ||
      joint.family.size === 'NPS12' ||
      joint.kind === 'girth' ||
      joint.kind === 'manway');
  if (large) return 'BP-02';
  return joint.system.code === '40-01' ? 'BP-03' : 'BP-01';
}

/**
 * Every eleventh joint where they gain is tightened by computed loads: pairs of twelve bolts and more on spiral-wound
 * gaskets. One of them is left part tight, so that a visitor sees its set values where a crew goes on.
 */
function takesComputedLoads(joint: DemoJoint): boolean {
  const plain = joint.kind === 'flange-pair' && joint.makes.length === 1 && joint.family.gasket === 'spiral-wound';
  return plain && joint.bolts >= 12 && joint.system.code !== '40-01' && joint.number % 11 === 0;
}

const passCountOf = (joint: DemoJoint): number => (procedureOf(joint) === 'BP-04' ? 2 : 3);

async function listPlaces({ story, cast }: Stage, start: Date): Promise<Places> {
  const { coordinator, inspector } = cast.by;
  story.shutdownId = story.id();
  const day = (offset: number) => daysAfter(start, offset).toISOString().slice(0, 10);
  await story.tell(coordinator, 'shutdown-opened', story.shutdownId, {
    name: `${SITE.shutdown} ${start.getUTCFullYear()}`,
    timeZone: SITE.timeZone,
    startsOn: day(0),
    endsOn: day(DAYS),
    shifts: [
      { name: 'day', starts: '06:00', ends: '18:00' },
      { name: 'night', starts: '18:00', ends: '06:00' },
    ],
    units: 'SI',
    areaBasis: 'tensile',
  });
  const areas: Record<string, string> = {};
  for (const { code, name } of AREAS) {
    const areaId = story.id();
    areas[code] = areaId;
    await story.tell(coordinator, 'area-listed', areaId, { areaId, code, name });
  }
  const systems: Record<string, string> = {};
  for (const { code, name, area } of SYSTEMS) {
    const systemId = story.id();
    systems[code] = systemId;
    await story.tell(coordinator, 'system-listed', systemId, { systemId, areaId: areas[area] ?? null, code, name });
  }
  for (const crew of cast.crews) {
    const { crewId, code, company, shift, personIds } = crew;
    await story.tell(coordinator, 'crew-listed', crewId, { crewId, code, company, shift, personIds: [...personIds] });
  }
  const packs = packsOf(story);
  for (const [index, { packId, number, systemCode }] of packs.entries()) {
    await story.tell(inspector, 'pack-planned', packId, {
      packId,
      number,
      systemId: systems[systemCode] ?? null,
      areaId: areas[systemCode.slice(0, 2)] ?? null,
      way: 'hydrotest',
      medium: 'water',
      pressure_MPa: 3,
      pressureAsEntered: { value: 30, unit: 'bar' },
      hold_min: 30,
      plannedOn: day(8 + Math.floor(index * 0.8)),
    });
  }
  return { areas, systems, packs };
}

/** Everything of the story, put down with its times. */
export async function scheduleStory(stage: Stage, start: Date, present: Date): Promise<void> {
  const { story, cast } = stage;
  const places = await listPlaces(stage, start);
  const joints = imagineJoints(story, cast.crews, places, JOINTS);
  const dayOf = planDays(joints, start);
  for (const joint of joints) {
    const plannedOn = dayOf.get(joint.jointId) ?? null;
    await story.tell(cast.by.coordinator, 'joint-listed', joint.jointId, {
      ...joint.payload,
      makes: joint.payload.makes.map((make) => ({ ...make, plannedOn })),
    });
    if (joint.blindId) await planBlind(stage, joint, joint.blindId, daysAfter(start, 16));
  }
  await engineerJoints(stage, joints);
  for (const crew of cast.crews) scheduleTalks(stage, crew, start);
  scheduleReleases(stage, joints, start);
  const checkedAt = new Map<string, Date>();
  for (const crew of cast.crews) {
    const own = joints.filter((joint) => joint.crew === crew);
    scheduleCrew(stage, crew, own, start, present, checkedAt);
  }
  schedulePacks(stage, joints, places, checkedAt, present);
  scheduleItems(stage, joints, present);
  scheduleIncidents(stage, joints, places, present);
}

/** The plan as it was made: so many joints to a crew and day. */
function planDays(joints: readonly DemoJoint[], start: Date): Map<string, string> {
  const perCrew = new Map<string, number>();
  const days = new Map<string, string>();
  for (const joint of joints) {
    const count = perCrew.get(joint.crew.code) ?? 0;
    perCrew.set(joint.crew.code, count + 1);
    days.set(
      joint.jointId,
      daysAfter(start, 1 + Math.floor(count / 7))
        .toISOString()
        .slice(0, 10),
    );
  }
  return days;
}

async function planBlind({ story, cast }: Stage, joint: DemoJoint, blindId: string, outBy: Date): Promise<void> {
  await story.tell(cast.by.coordinator, 'blind-planned', blindId, {
    blindId,
    number: `B-${joint.tag}`,
    type: 'spade',
    rating: joint.family.rating,
    thickness_mm: 16,
    purpose: 'isolation',
    jointId: joint.jointId,
    packId: null,
    owner: 'operations',
    outBy: outBy.toISOString().slice(0, 10),
  });
}

/** Procedures for all, targets for all but the last few: the engineer is still at work on those. */
async function engineerJoints({ story, cast, engineering }: Stage, joints: readonly DemoJoint[]): Promise<void> {
  const { engineer } = cast.by;
  const rows = joints
    .filter((joint) => joint.late !== 'unengineered')
    .flatMap((joint) => joint.makes.map((make) => ({ joint, make })));
  await story.list(
    engineer,
    'procedure-assigned',
    rows.map(({ joint, make }) => ({
      jointId: joint.jointId,
      makeId: make.makeId,
      payload: { procedureId: engineering.procedures[procedureOf(joint)], revision: 1 },
    })),
  );
  await story.list(
    engineer,
    'target-approved',
    rows
      .filter(({ joint }) => joint.late !== 'no-target')
      .map(({ joint, make }) => ({
        jointId: joint.jointId,
        makeId: make.makeId,
        payload: targetOf(joint, engineering.gasketData[make.gasketFamily] ?? '', engineering),
      })),
  );
}

function targetOf(
  joint: DemoJoint,
  gasketDataId: string,
  engineering: Stage['engineering'],
): Payload<'target-approved'> {
  if (joint.makersTorque_Nm !== null) {
    return {
      basis: 'makers-torque',
      torque_Nm: joint.makersTorque_Nm,
      torqueAsEntered: { value: joint.makersTorque_Nm, unit: 'N·m' },
      lubricant: engineering.lubricant,
      source: 'demo data: stands for the maker’s sheet',
    };
  }
  return {
    basis: 'calculated',
    gasketDataId,
    lubricantId: engineering.lubricantId,
    boltStress_MPa: null,
    acceptedShortfall:
      'Demo: the spread of the wrench leaves the window; accepted by the joint engineer for this service.',
    tightening: takesComputedLoads(joint) ? { way: 'computed-loads', toolDivision_Nm: 5, setValues: 3 } : null,
  };
}

function scheduleTalks({ story, timetable, engineering }: Stage, crew: Crew, start: Date): void {
  for (const [index, procedureId] of Object.values(engineering.procedures).entries()) {
    timetable.put(hoursAfter(start, 5 + index * 0.25), () => {
      const talkId = story.id();
      return story.tell(crew.chargehand, 'talk-held', talkId, {
        talkId,
        procedureId,
        revision: 1,
        crewId: crew.crewId,
        heldBy: crew.chargehand.actor.personId,
        attendees: crew.personIds.map((personId) => ({ personId, signedBy: 'pin' as const })),
      });
    });
  }
}

/** Operations releases system by system, one permit for each, ahead of the crews. */
function scheduleReleases({ story, cast, timetable }: Stage, joints: readonly DemoJoint[], start: Date): void {
  const { operations } = cast.by;
  const released = joints.filter((joint) => !joint.late);
  for (const [index, system] of SYSTEMS.entries()) {
    const own = released.filter((joint) => joint.system.code === system.code);
    timetable.put(hoursAfter(start, 5.2 + index * 0.05), async () => {
      const permitId = story.id();
      await story.tell(operations, 'permit-recorded', permitId, {
        permitId,
        number: `PTW-${system.code}`,
        isolationReference: `ISO-${system.code}-A`,
        jointIds: own.map((joint) => joint.jointId),
        validFrom: hoursAfter(start, 4).toISOString(),
        validUntil: daysAfter(start, DAYS).toISOString(),
      });
      for (const number of [0, 1]) {
        const rows = own.flatMap((joint) => {
          const make = joint.makes[number];
          return make ? [{ jointId: joint.jointId, makeId: make.makeId, payload: { permitId, remark: null } }] : [];
        });
        await story.list(operations, 'break-released', rows);
      }
    });
  }
}

/** Why a crew left a flange part tight in the last hours of the story. */
const LEFT_PART_TIGHT: Readonly<Record<string, string>> = {
  D1: 'end of shift',
  N1: 'wrench failed',
  D4: 'called away by operations',
};
const LAST_HOURS = 16;

/** A crew opens ten joints, then closes them one after the other, and goes on to the next ten. */
function scheduleCrew(
  stage: Stage,
  crew: Crew,
  joints: readonly DemoJoint[],
  start: Date,
  present: Date,
  checkedAt: Map<string, Date>,
): void {
  const clock = new CrewClock(start, crew.shift === 'day' ? 6 : 18, 11);
  const small = joints.filter((joint) => SMALL_SYSTEMS.includes(joint.system.code));
  const workable = [...small, ...joints.filter((joint) => !small.includes(joint))].filter((joint) => !joint.late);
  let why: string | undefined = LEFT_PART_TIGHT[crew.code];
  for (let from = 0; from < workable.length && clock.at < present; from += AT_ONCE) {
    const lot = workable.slice(from, from + AT_ONCE);
    for (const joint of lot) if (joint.makes[0]) scheduleOpening(stage, clock, joint, joint.makes[0]);
    for (const joint of lot) {
      const make = joint.makes[0];
      if (!make) continue;
      const passCount = passCountOf(joint);
      clock.keepTogether(minutesToClose(joint, passCount));
      const late = why !== undefined && clock.at > hoursAfter(present, -LAST_HOURS);
      const stop = late && why ? { pass: 2, bolts: Math.floor(joint.bolts / 2), why } : null;
      const tightAt = closeJoint(stage, clock, joint, make, stop);
      if (stop) {
        why = undefined;
        continue;
      }
      const relaxes = joint.criticality === 'A' || procedureOf(joint) === 'BP-02';
      checkedAt.set(joint.jointId, scheduleCheck(stage, tightAt, joint, make, relaxes));
    }
  }
}

/** The first make of a joint, closed and tight; a spaded joint rests with its spade in. */
function closeJoint(
  stage: Stage,
  clock: CrewClock,
  joint: DemoJoint,
  make: DemoMake,
  stop: { pass: number; bolts: number; why: string } | null,
): Date {
  scheduleFacesAndNipUp(stage, clock, joint, make);
  const { story, timetable } = stage;
  const { blindId } = joint;
  if (blindId) {
    const { at } = clock;
    timetable.put(at, () =>
      story.tell(joint.crew.technician, 'blind-in', blindId, { tagHung: true, photo: null, remark: null }),
    );
  }
  return scheduleTightening(stage, clock, joint, make, passCountOf(joint), stop);
}
