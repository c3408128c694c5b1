import { tighteningSequence } from '@seatwell/calc';
import { computedPasses, type JointState, type MakeState, passCountOf } from '@seatwell/workflow';
import type { Engineering } from './engineering.ts';
import type { DemoJoint, DemoMake } from './joints.ts';
import type { Cast, Toolbox } from './people-and-tools.ts';
import type { Recorder } from './recorder.ts';
import { type CrewClock, hoursAfter, type Timetable } from './timetable.ts';

export interface Stage {
  readonly story: Recorder;
  readonly cast: Cast;
  readonly tools: Toolbox;
  readonly engineering: Engineering;
  readonly timetable: Timetable;
}

export async function makeOf(
  story: Recorder,
  joint: DemoJoint,
  make: DemoMake,
): Promise<{ joint: JointState; make: MakeState }> {
  const { rows } = await story.db.query<{ state: JointState }>('SELECT state FROM joint WHERE joint_id = $1', [
    joint.jointId,
  ]);
  const state = rows[0]?.state;
  const found = state?.makes.find((each) => each.makeId === make.makeId);
  if (!state || !found) throw new Error(`${joint.tag} has no make ${make.makeId}.`);
  return { joint: state, make: found };
}

/** The pair that opens, closes and tightens; another pair goes round for the relaxation passes. */
const pairOf = ({ crew }: DemoJoint): string[] =>
  [crew.personIds[1], crew.personIds[2]].filter((id) => id !== undefined);
const relaxationPairOf = ({ crew }: DemoJoint): string[] =>
  [crew.personIds[3], crew.personIds[5]].filter((id) => id !== undefined);

export function scheduleOpening({ story, timetable }: Stage, clock: CrewClock, joint: DemoJoint, make: DemoMake): void {
  const { to } = clock.take(15);
  const [first, second] = pairOf(joint);
  if (!first || !second) throw new Error(`Crew ${joint.crew.code} is too small.`);
  timetable.put(to, () =>
    story.tell(
      joint.crew.technician,
      'opened',
      joint.jointId,
      {
        zeroEnergyChecks: [
          { personId: first, how: 'vent open, gauge at zero' },
          { personId: second, how: 'drain open, no flow' },
        ],
        cautionShown: true,
        openEndsCovered: true,
        remark: null,
      },
      { makeId: make.makeId, performedBy: [first, second] },
    ),
  );
}

export function scheduleFacesAndNipUp(
  { story, timetable, engineering }: Stage,
  clock: CrewClock,
  joint: DemoJoint,
  make: DemoMake,
): void {
  const people = pairOf(joint);
  const options = { makeId: make.makeId, performedBy: people };
  // A mark is judged by the width that the gasket covers; nobody here has measured that of the special flanges.
  const marked = story.random.chance(0.3) && joint.payload.specification.flange.standard !== 'custom';
  const faces = Math.max(1, make.gaskets) * 2;
  const inspected = clock.take(15).to;
  timetable.put(inspected, () =>
    story.tell(
      joint.crew.technician,
      'faces-inspected',
      joint.jointId,
      {
        faces: Array.from({ length: faces }, (_, index) => ({
          face: index + 1,
          condition: marked && index === 0 ? ('light-marks' as const) : ('clean' as const),
          flatness_mm: 0.04 + 0.01 * (index % 4),
          imperfectionDepth_mm: marked && index === 0 ? 0.05 : null,
          imperfectionExtent_mm: marked && index === 0 ? 1.5 : null,
          ringGrooveTouched: true,
          accepted: true,
          photo: null,
        })),
        bolting: { condition: 'new', accepted: true },
        accepted: true,
        remark: null,
      },
      options,
    ),
  );
  const nipped = clock.take(20).to;
  const reading = () => Math.round(story.random.next() * 6) / 10;
  const alignment = {
    parallelism_mm: joint.kind === 'machine-nozzle' ? 0.03 : reading(),
    offset_mm: reading(),
    rotation_mm: reading(),
    pullIn_percent: story.random.whole(0, 8),
    gaps_mm: [3, 3.1, 3, 2.9],
  };
  const batch = `26-${story.random.whole(100, 999)}`;
  const { flange, bolting } = joint.payload.specification;
  timetable.put(nipped, async () => {
    const { make: now } = await makeOf(story, joint, make);
    await story.tell(
      joint.crew.technician,
      'nipped-up',
      joint.jointId,
      {
        gasket: {
          family: make.gasketFamily,
          detail: null,
          size: flange.size,
          rating: flange.rating || null,
          purpose: make.purpose,
          count: make.gaskets,
          batch,
          markingPhoto: null,
        },
        bolting: {
          grade: bolting?.grade ?? '',
          condition: 'new',
          count: joint.bolts,
          temporary: make.purpose === 'spade-in',
        },
        lubricantId: now.target?.lubricantId ?? null,
        lubricant: now.target?.lubricant ?? engineering.lubricant,
        alignment,
        remark: null,
      },
      options,
    );
  });
}

/** The tools that fit a make: a wrench whose 20 to 100 % holds every pass, or the hydraulic set. */
function toolsFor(tools: Toolbox, make: MakeState): { toolId: string; pumpId: string | null; gaugeId: string | null } {
  const byProcedure = make.target?.passes.map((pass) => pass.torque_Nm ?? 0) ?? [];
  const computed = computedPasses(make)?.flatMap(({ setValues_Nm }) => setValues_Nm);
  // The final round goes at the target, whatever the passes were set to.
  const passes = computed ? [...computed, ...byProcedure.slice(-1)] : byProcedure;
  const least = Math.min(...passes);
  const most = Math.max(...passes);
  if (make.procedure?.method !== 'hydraulic-wrench') {
    const wrench = tools.wrenches.find(({ scale_Nm }) => scale_Nm >= most * 1.02 && least * 0.98 >= 0.2 * scale_Nm);
    if (wrench) return { toolId: wrench.toolId, pumpId: null, gaugeId: null };
    throw new Error(`No wrench of the demo holds ${least.toFixed(0)} to ${most.toFixed(0)} N·m.`);
  }
  const set = tools.hydraulics.find(({ least_Nm, most_Nm }) => least_Nm <= least * 0.98 && most_Nm >= most * 1.02);
  if (!set) throw new Error(`No hydraulic wrench of the demo holds ${least.toFixed(0)} to ${most.toFixed(0)} N·m.`);
  return { toolId: set.toolId, pumpId: tools.pumpId, gaugeId: tools.gaugeId };
}

/** The modified cross pattern of the demo begins with four bolts, then four more, then the rest. */
function boltsOfPass(joint: DemoJoint, make: MakeState, pass: number): number {
  const computed = computedPasses(make)?.[pass - 1];
  if (computed) return computed.steps.length;
  const pattern =
    make.procedure?.code === 'BP-02' ? 'modified-legacy' : make.procedure?.code === 'BP-04' ? 'circular' : 'legacy';
  const passPercents = make.target?.passes.map((each) => each.percent) ?? [];
  const { passes } = tighteningSequence({ boltCount: joint.bolts, pattern, passPercents, numbering: 'clockwise' });
  return new Set(passes[pass - 1]?.steps.flat()).size;
}

/** What the tool is set to in a pass: the last of its set values where they were computed. */
const torqueOfPass = (make: MakeState, pass: number): number =>
  computedPasses(make)?.[pass - 1]?.setValues_Nm.at(-1) ?? make.target?.passes[pass - 1]?.torque_Nm ?? 0;

const settingOf = (torque_Nm: number) => {
  const rounded = Math.round(torque_Nm);
  return { torque_Nm: rounded, asEntered: { value: rounded, unit: 'N·m' } };
};

/** Forty seconds a bolt, and never less than eight minutes. */
const minutesOfPass = (joint: DemoJoint): number => Math.max(8, Math.ceil((joint.bolts * 40) / 60));

/** From the faces to the final round. */
export const minutesToClose = (joint: DemoJoint, passCount: number): number =>
  15 + 20 + (passCount + 1) * minutesOfPass(joint) + 4;

/** Passes and final round; with `stopAfter`, the pass that is interrupted and by which bolt. */
export function scheduleTightening(
  { story, timetable, tools }: Stage,
  clock: CrewClock,
  joint: DemoJoint,
  make: DemoMake,
  passCount: number,
  stop: { pass: number; bolts: number; why: string } | null = null,
): Date {
  const people = pairOf(joint);
  const options = { makeId: make.makeId, performedBy: people };
  const minutes = minutesOfPass(joint);
  for (let pass = 1; pass <= passCount; pass += 1) {
    const { from, to } = clock.take(minutes);
    const interrupted = stop?.pass === pass;
    timetable.put(to, async () => {
      const { make: now } = await makeOf(story, joint, make);
      // Computed loads come out in fewer passes than the day was planned with.
      if (pass > passCountOf(now)) return;
      await story.tell(
        joint.crew.technician,
        'pass-recorded',
        joint.jointId,
        {
          pass,
          set: settingOf(torqueOfPass(now, pass)),
          tools: toolsFor(tools, now),
          startedAt: from.toISOString(),
          endedAt: to.toISOString(),
          outcome: interrupted ? 'interrupted' : 'finished',
          lastBolt: interrupted ? Math.min(joint.bolts, stop.bolts) : null,
          boltsDone: interrupted ? stop.bolts : boltsOfPass(joint, now, pass),
          why: interrupted ? stop.why : null,
          gapsChecked_mm: null,
        },
        options,
      );
    });
    if (interrupted) return to;
  }
  const { from, to } = clock.take(minutes + 4);
  timetable.put(to, async () => {
    const { make: now } = await makeOf(story, joint, make);
    await story.tell(
      joint.crew.technician,
      'final-round-recorded',
      joint.jointId,
      {
        set: settingOf(now.target?.passes.at(-1)?.torque_Nm ?? 0),
        tools: toolsFor(tools, now),
        startedAt: from.toISOString(),
        endedAt: to.toISOString(),
        rounds: story.random.whole(1, 3),
        nutMoved: false,
      },
      options,
    );
  });
  return to;
}

/** Relaxation pass where it is due, the witness of criticality A, and the check at the level that is due. */
export function scheduleCheck(
  { story, timetable, tools, cast }: Stage,
  tightAt: Date,
  joint: DemoJoint,
  make: DemoMake,
  relaxes: boolean,
): Date {
  let at = hoursAfter(tightAt, 1);
  if (relaxes) {
    at = hoursAfter(tightAt, 5);
    const from = at;
    const to = hoursAfter(at, 0.5);
    at = to;
    timetable.put(to, async () => {
      const { make: now } = await makeOf(story, joint, make);
      await story.tell(
        joint.crew.technician,
        'relaxation-pass-recorded',
        joint.jointId,
        {
          set: settingOf(now.target?.passes.at(-1)?.torque_Nm ?? 0),
          tools: toolsFor(tools, now),
          startedAt: from.toISOString(),
          endedAt: to.toISOString(),
          nutsMoved: story.random.whole(0, 3),
        },
        { makeId: make.makeId, performedBy: relaxationPairOf(joint) },
      );
    });
  }
  at = hoursAfter(at, 0.5);
  timetable.put(at, async () => {
    const state = await makeOf(story, joint, make);
    const version = state.joint.version;
    if (joint.criticality === 'A') {
      await story.tell(
        cast.by.witness,
        'witnessed',
        joint.jointId,
        { point: 'tightening', remark: null },
        { makeId: make.makeId, versionSeen: version },
      );
    }
    const level = joint.criticality === 'A' ? 'every' : state.make.sampleDrawn ? 'sample' : 'chargehand';
    const byInspector = joint.criticality === 'A' || (joint.criticality === 'B' && state.make.sampleDrawn);
    await story.tell(
      byInspector ? cast.by.inspector : joint.crew.chargehand,
      'checked',
      joint.jointId,
      { level: byInspector ? level : 'chargehand', outcome: 'accepted', reason: null },
      { makeId: make.makeId, versionSeen: joint.criticality === 'A' ? version + 1 : version },
    );
  });
  return at;
}
