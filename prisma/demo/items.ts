import type { Stage } from './crew-work.ts';
import type { DemoJoint } from './joints.ts';
import { hoursAfter } from './timetable.ts';

/** Items that come out where both of their joints are open: what they are, and where they go then. */
const COMES_OUT = {
  FV: { kind: 'control-valve', goesTo: 'workshop', description: null },
  SP: { kind: 'spool', goesTo: 'at-the-joint', description: 'with its supports' },
} as const;
type Code = keyof typeof COMES_OUT;

interface DemoItem {
  readonly tag: string;
  readonly code: Code;
  readonly jointIds: readonly string[];
}

const codeOf = (tag: string): Code | undefined =>
  (Object.keys(COMES_OUT) as Code[]).find((code) => new RegExp(`^${code}\\d`).test(tag));

/** Valves and spools of the register, each between the first two joints that name it. */
function itemsOf(joints: readonly DemoJoint[]): readonly DemoItem[] {
  const found = new Map<string, string[]>();
  for (const { jointId, payload } of joints) {
    const tag = payload.whereabouts.item;
    if (tag === null || codeOf(tag) === undefined) continue;
    found.set(tag, [...(found.get(tag) ?? []), jointId]);
  }
  return [...found]
    .filter(([, jointIds]) => jointIds.length > 1)
    .map(([tag, jointIds]) => ({ tag, code: codeOf(tag) as Code, jointIds: jointIds.slice(0, 2) }));
}

/** Registers the items in the first days, and tells of those that are out at present where they are. */
export function scheduleItems({ story, cast, timetable }: Stage, joints: readonly DemoJoint[], present: Date): void {
  const [crew] = cast.crews;
  if (!crew) return;
  const items = itemsOf(joints).map((item) => ({ ...item, itemId: story.id() }));
  timetable.put(hoursAfter(present, -230), async () => {
    for (const { itemId, tag, code, jointIds } of items) {
      const { kind, description } = COMES_OUT[code];
      await story.tell(crew.chargehand, 'item-registered', itemId, {
        itemId,
        tag,
        kind,
        description,
        jointIds: [...jointIds],
      });
    }
  });
  timetable.put(hoursAfter(present, -1), async () => {
    const { rows } = await story.db.query<{ joint_id: string }>(
      `SELECT joint_id FROM make WHERE shutdown_id = $1 AND stage IN ('open', 'faces-accepted')`,
      [story.shutdownId],
    );
    const open = new Set(rows.map((row) => row.joint_id));
    for (const { itemId, code, jointIds } of items) {
      if (!jointIds.some((jointId) => open.has(jointId))) continue;
      const whereabouts = COMES_OUT[code].goesTo;
      await story.tell(crew.chargehand, 'item-moved', itemId, { whereabouts, remark: null });
    }
  });
}
