import { type Stage, scheduleCheck, scheduleFacesAndNipUp, scheduleOpening, scheduleTightening } from './crew-work.ts';
import type { DemoJoint, DemoMake, Places } from './joints.ts';
import { CrewClock, hoursAfter } from './timetable.ts';

/** Systems whose packs are tested early in the story; the second stays proven, the third has a leak. */
const TESTED = ['30-02', '30-03', '40-01'] as const;

/** Spades come out and the final make is closed, tight and checked, before the pack can be tested. */
function closeFinalMake(stage: Stage, joint: DemoJoint, make: DemoMake, from: Date): Date {
  const { story, timetable } = stage;
  const clock = new CrewClock(from, 0, 24);
  scheduleOpening(stage, clock, joint, make);
  const { blindId } = joint;
  if (blindId) {
    const { at } = clock;
    timetable.put(at, () => story.tell(joint.crew.technician, 'blind-out', blindId, { photo: null, remark: null }));
  }
  scheduleFacesAndNipUp(stage, clock, joint, make);
  const tightAt = scheduleTightening(stage, clock, joint, make, 3);
  return scheduleCheck(stage, tightAt, joint, make, joint.criticality === 'A');
}

/** Release, readings, proof and hand-over of the systems that are ready first. */
export function schedulePacks(
  stage: Stage,
  joints: readonly DemoJoint[],
  places: Places,
  checkedAt: ReadonlyMap<string, Date>,
  present: Date,
): void {
  for (const code of TESTED) {
    const own = joints.filter((joint) => joint.system.code === code);
    const times = own.map((joint) => checkedAt.get(joint.jointId));
    if (times.some((time) => time === undefined || time > present)) continue;
    let ready = new Date(Math.max(...times.map((time) => time?.getTime() ?? 0)));
    ready = hoursAfter(ready, 2);
    for (const joint of own) {
      const final = joint.makes[1];
      if (!final) continue;
      const closed = closeFinalMake(stage, joint, final, ready);
      if (closed > ready) ready = closed;
    }
    const pack = places.packs.find((each) => each.systemCode === code);
    if (pack) schedulePack(stage, own, pack.packId, hoursAfter(ready, 8), code, places);
  }
}

const finalOf = (joint: DemoJoint): DemoMake => {
  const make = joint.makes.at(-1);
  if (!make) throw new Error(`${joint.tag} has no make.`);
  return make;
};

function schedulePack(
  stage: Stage,
  own: readonly DemoJoint[],
  packId: string,
  at: Date,
  code: string,
  places: Places,
): void {
  const { story, cast, timetable, tools } = stage;
  const { inspector, coordinator, operations } = cast.by;
  const versionOf = async () =>
    (await story.db.query<{ version: number }>('SELECT version FROM test_pack WHERE pack_id = $1', [packId])).rows[0]
      ?.version ?? 0;
  const leaking = code === '40-01' ? own[4] : undefined;
  timetable.put(at, async () =>
    story.tell(
      inspector,
      'pack-released',
      packId,
      {
        boundaryWalked: true,
        blindsRated: true,
        reliefValvesOut: true,
        metalTemperature_C: 14,
        gaugeIds: [tools.testGaugeId],
        remark: null,
      },
      { versionSeen: await versionOf() },
    ),
  );
  const readAt = hoursAfter(at, 1);
  timetable.put(readAt, () =>
    story.tell(inspector, 'test-reading', packId, {
      readAt: readAt.toISOString(),
      pressure_MPa: 3.02,
      pressureAsEntered: { value: 30.2, unit: 'bar' },
      metalTemperature_C: 14,
      gaugeIds: [tools.testGaugeId],
      held_min: 45,
      results: own.map((joint) => ({
        jointId: joint.jointId,
        makeId: finalOf(joint).makeId,
        result: joint === leaking ? ('leak' as const) : ('no-leak' as const),
      })),
    }),
  );
  if (leaking) {
    timetable.put(hoursAfter(readAt, 0.1), () =>
      story.tell(
        inspector,
        'leak-found',
        leaking.jointId,
        {
          when: 'test',
          where: 'between bolts 3 and 4',
          underPressure: false,
          packId,
          punchId: story.id(),
          remark: 'Weeps at test pressure; pressure was taken off.',
        },
        { makeId: finalOf(leaking).makeId },
      ),
    );
    return;
  }
  timetable.put(hoursAfter(readAt, 1), () =>
    story.list(
      inspector,
      'proven',
      own.map((joint) => ({
        jointId: joint.jointId,
        makeId: finalOf(joint).makeId,
        payload: { way: 'hydrotest' as const, packId, remark: null },
      })),
    ),
  );
  const systemId = places.systems[code];
  if (code !== '30-02' || !systemId) return;
  const handOver = own.map((joint) => ({
    jointId: joint.jointId,
    makeId: finalOf(joint).makeId,
    payload: { systemId, exceptions: [] },
  }));
  timetable.put(hoursAfter(readAt, 6), () => story.list(coordinator, 'hand-over-offered', handOver));
  timetable.put(hoursAfter(readAt, 7), () => story.list(operations, 'handed-over', handOver));
}
