import { boltPlanSvg, drawingPalettes, type PlanBolt, type PlanGroup } from '@seatwell/workflow';
import { groupLetter, type SheetSequence } from './sheet-sequence.ts';
import type { SheetSource } from './sheet-source.ts';
import { fill, type SheetTexts } from './texts/sheet-texts.ts';

/** The bolt plan as data: labels by place, groups, and where it is looked at from. */
export interface PlanContent {
  readonly bolts: readonly { readonly label: number; readonly clockwiseIndex: number }[];
  readonly groups: readonly PlanGroup[];
  readonly title: string;
  readonly across: string;
  readonly viewedFrom: string | null;
  readonly bolt1At: string | null;
  /** warnings where viewing side or datum are not entered; room to write is left beside each */
  readonly ask: readonly string[];
  readonly notes: readonly string[];
  /** why there is no drawing */
  readonly missing: string | null;
  /** too many bolts for a corner of the first page */
  readonly ownPage: boolean;
}

const MOST_BESIDE_FACTS = 40;

export function planContent(
  { joint, procedure }: SheetSource,
  sequence: SheetSequence | null,
  refused: string | null,
  { plan }: SheetTexts,
): PlanContent {
  const { viewedFrom, bolt1At } = joint.whereabouts;
  const count = joint.bolting?.count ?? 0;
  // Without a procedure no numbering is agreed: no numbers are drawn.
  const bolts = sequence?.sequence.positions.map(({ label, clockwiseIndex }) => ({ label, clockwiseIndex })) ?? [];
  const group = procedure?.content.group ?? 1;
  const groups =
    sequence && group > 1
      ? Array.from({ length: count / group }, (_, index) => ({
          label: groupLetter(index),
          firstClockwiseIndex: index * group + 1,
          lastClockwiseIndex: (index + 1) * group,
        }))
      : [];
  const missing = joint.bolting === null ? plan.boltingMissing : refused;
  return {
    bolts,
    groups,
    title: fill(plan.drawing, { tag: joint.tag, count }),
    across: fill(plan.across, { count }),
    viewedFrom: viewedFrom === null ? null : fill(plan.viewedFrom, { side: viewedFrom }),
    bolt1At: bolt1At === null ? null : fill(plan.bolt1, { place: bolt1At }),
    ask: [...(viewedFrom === null ? [plan.noViewingSide] : []), ...(bolt1At === null ? [plan.noDatum] : [])],
    notes: [plan.notchTop, ...(groups.length > 0 ? [plan.groups] : [])],
    missing: bolts.length > 0 ? null : fill(plan.none, { reason: missing ?? plan.noProcedure }),
    ownPage: bolts.length > MOST_BESIDE_FACTS,
  };
}

/** The drawing of the plan for print, as wide as it will be set: sizes in points. */
export function planSvg(content: PlanContent, tag: string, width_pt: number): string {
  const bolts: PlanBolt[] = content.bolts.map((bolt) => ({ ...bolt, passesDone: 0 }));
  return boltPlanSvg({
    bolts,
    groups: content.groups,
    passes: 1,
    size: width_pt,
    palette: drawingPalettes.print,
    title: content.title,
    labels: 'every',
    centre: [
      { text: tag, size: 0.075, weight: 720 },
      { text: content.across, size: 0.045, tone: 'soft' },
    ],
  });
}
