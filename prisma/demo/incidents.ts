import { makeOf, type Stage } from './crew-work.ts';
import type { DemoJoint, Places } from './joints.ts';
import { hoursAfter } from './timetable.ts';

/** What goes otherwise than planned: found joints, a void, holds, punch items, a loose nut, a fact in review. */
export function scheduleIncidents(stage: Stage, joints: readonly DemoJoint[], places: Places, present: Date): void {
  findJoints(stage, places, present);
  voidOne(stage, joints, present);
  holdTwo(stage, joints, present);
  raiseItems(stage, joints, present);
  loosenOne(stage, joints, present);
  recordOneAfterTheFact(stage, joints, present);
}

const workOf = (joints: readonly DemoJoint[], code: string): readonly DemoJoint[] =>
  joints.filter((joint) => joint.system.code === code && joint.late === null);

function findJoints({ story, cast, timetable }: Stage, places: Places, present: Date): void {
  const [, second] = cast.crews;
  if (!second) return;
  for (const [index, nearest] of ['vent of E-2, second platform', 'bypass of FV-12'].entries()) {
    timetable.put(hoursAfter(present, -30 + index * 9), () =>
      story.tell(second.technician, 'joint-found', story.id(), {
        placeId: story.id(),
        temporaryNumber: `F-${String(index + 1).padStart(4, '0')}`,
        nearest,
        areaId: places.areas['20'] ?? null,
        size: index === 0 ? 'NPS2' : 'NPS3',
        rating: '300',
        photo: null,
        makeId: story.id(),
        remark: 'Not in the register.',
      }),
    );
  }
}

function voidOne({ story, cast, timetable }: Stage, joints: readonly DemoJoint[], present: Date): void {
  const joint = joints.find((each) => each.late === 'unreleased');
  if (!joint) return;
  timetable.put(hoursAfter(present, -50), async () => {
    const version = (await story.versions([joint.jointId])).get(joint.jointId) ?? 0;
    await story.tell(
      cast.by.coordinator,
      'joint-voided',
      joint.jointId,
      { why: 'welded-up', reason: 'The branch was cut and capped in the last campaign.' },
      { versionSeen: version },
    );
  });
}

function holdTwo({ story, cast, timetable }: Stage, joints: readonly DemoJoint[], present: Date): void {
  const held = joints.filter((joint) => joint.late === 'unreleased').slice(3, 5);
  for (const [index, joint] of held.entries()) {
    timetable.put(hoursAfter(present, -20 - index), () =>
      story.tell(cast.by.engineer, 'hold-placed', joint.jointId, {
        holdId: story.id(),
        reason: 'Stud length to be confirmed on site before the joint is released.',
        releasedBy: 'engineer',
      }),
    );
  }
}

function raiseItems({ story, cast, timetable }: Stage, joints: readonly DemoJoint[], present: Date): void {
  const items = [
    ['A', '10-01', 'Support beside the flange is loose.'],
    ['B', '10-02', 'Line tag missing.'],
    ['B', '20-02', 'Insulation box does not close.'],
    ['C', '20-03', 'Paint on two nuts.'],
    ['A', '20-01', 'One nut stands less than flush.'],
  ] as const;
  for (const [index, [category, code, text]] of items.entries()) {
    const joint = workOf(joints, code)[index];
    if (!joint) continue;
    timetable.put(hoursAfter(present, -40 + index * 5), () => {
      const punchId = story.id();
      return story.tell(cast.by.inspector, 'punch-raised', punchId, {
        punchId,
        category,
        text,
        jointId: joint.jointId,
        packId: null,
        systemId: null,
        owner: joint.crew.code,
      });
    });
  }
}

/** QC turns a nut of a checked joint by hand: the joint is part tight again, with everybody told. */
function loosenOne({ story, cast, timetable }: Stage, joints: readonly DemoJoint[], present: Date): void {
  timetable.put(hoursAfter(present, -3), async () => {
    for (const joint of workOf(joints, '40-02')) {
      const make = joint.makes.at(-1);
      if (!make || joint.makes.length > 1) continue;
      const state = await makeOf(story, joint, make);
      if (state.make.stage !== 'checked') continue;
      await story.tell(
        cast.by.inspector,
        'loosened',
        joint.jointId,
        { extent: 'some', bolts: [1], reason: 'Nut 1 turned by hand: loosened and to be tightened again.' },
        { makeId: make.makeId },
      );
      return;
    }
  });
}

/** Somebody opened a joint with one zero-energy check written down: the fact is kept, and waits for an answer. */
function recordOneAfterTheFact({ story, cast, timetable }: Stage, joints: readonly DemoJoint[], present: Date): void {
  const crew = cast.crews[1];
  if (!crew) return;
  timetable.put(hoursAfter(present, -2), async () => {
    const [joint] = await stillReleased(
      story,
      joints.filter((each) => each.crew === crew && each.late === null),
    );
    const make = joint?.makes[0];
    const [, first] = crew.personIds;
    if (!joint || !make || !first) return;
    await story.tell(
      crew.technician,
      'opened',
      joint.jointId,
      {
        zeroEnergyChecks: [{ personId: first, how: 'vent open' }],
        cautionShown: true,
        openEndsCovered: true,
        remark: 'Second check was made and not written down.',
      },
      { makeId: make.makeId, performedBy: [first], alreadyDone: true },
    );
  });
}

async function stillReleased(story: Stage['story'], joints: readonly DemoJoint[]): Promise<DemoJoint[]> {
  const { rows } = await story.db.query<{ joint_id: string }>(
    "SELECT joint_id FROM joint WHERE joint_id = ANY($1::uuid[]) AND stage = 'released' ORDER BY tag_key DESC LIMIT 1",
    [joints.map((joint) => joint.jointId)],
  );
  return joints.filter((joint) => rows.some((row) => row.joint_id === joint.jointId));
}
